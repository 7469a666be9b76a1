package rainward.brief.picture;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.awt.Shape;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Letters without a font on the machine. */
class LetteringTest {

    private static final Path FONT = Path.of("/usr/share/fonts/truetype/dejavu/DejaVuSans.ttf");

    @Test
    void aWordIsAsWideAsItsLettersAndStandsOnItsLine() {
        Lettering letters = Letters.kept();

        Shape hill = letters.outline("HILL", 10, 100, 50);

        assertThat(letters.width("HILL", 10))
                .isCloseTo(2 * letters.width("L", 10) + letters.width("HI", 10), within(1e-9));
        assertThat(hill.getBounds2D().getMinX()).isBetween(100.0, 102.0);
        assertThat(hill.getBounds2D().getMaxY()).isCloseTo(50, within(0.01));
        assertThat(hill.getBounds2D().getHeight()).isBetween(7.0, 7.6);
    }

    @Test
    void aLetterThatIsNotKeptIsShownAsAQuestionMark() {
        Lettering letters = Letters.kept();

        assertThat(letters.width("日", 10)).isEqualTo(letters.width("?", 10));
    }

    @Test
    void outlinesWithoutAQuestionMarkAreRefused() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Lettering.of("# nothing\n41 700 M 0 0 L 10 0 Z\n"))
                .withMessageContaining("?");
    }

    @Test
    void theKeptOutlinesAreThoseOfTheFont() throws Exception {
        Assumptions.assumeTrue(Files.exists(FONT), "DejaVu Sans is not installed here");

        assertThat(OutlineWriter.outlines(FONT))
                .isEqualTo(
                        Files.readString(Path.of("src/main/resources/lettering/DejaVuSans.txt")));
    }

    /** AWT itself fails on such a machine as soon as a font is asked for. */
    @Test
    void thePictureIsTheSameWhereNoFontIsInstalled(@TempDir Path bare) throws Exception {
        Path fonts = Files.writeString(
                bare.resolve("fonts.conf"),
                "<?xml version=\"1.0\"?><fontconfig><cachedir>" + bare
                        + "</cachedir></fontconfig>");
        var java = new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Djava.awt.headless=true",
                "-Duser.home=" + bare,
                "-cp",
                System.getProperty("java.class.path"),
                OnABareMachine.class.getName());
        java.environment().put("FONTCONFIG_FILE", fonts.toString());
        Process child = java.redirectError(ProcessBuilder.Redirect.INHERIT).start();

        assertThat(child.waitFor(120, TimeUnit.SECONDS)).isTrue();
        assertThat(new String(child.getInputStream().readAllBytes()).strip())
                .isEqualTo(OnABareMachine.fingerprint());
    }
}
