package rainward.brief.picture;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import rainward.brief.FieldPanel;
import rainward.brief.SampleCrew;
import rainward.cycle.RainPicture.Bar;
import rainward.farm.UnitSystem;
import rainward.farm.Window;
import rainward.readiness.Figures;
import rainward.stand.StandOutlook;

/** The picture of a field, read dot by dot. */
class FieldChartTest {

    private static final Instant START = Instant.parse("2026-07-16T06:00:00Z");
    private static final int MIDDLE_X = 330;

    private static FieldPanel panel(double chance, double rainMm, Figures.Range water) {
        Window six =
                new Window(START.plus(Duration.ofHours(120)), START.plus(Duration.ofHours(126)));
        return new FieldPanel(
                "Upper Bench",
                List.of(new Bar(six, 1, rainMm, rainMm, 0)),
                new Figures.Course(START, Duration.ofHours(3), Collections.nCopies(81, water)),
                new FieldPanel.WaterMarks(0.1, 0.3),
                List.of(stand("turnip and rape", chance), stand("three brassicas", 0.1)),
                START.plus(Duration.ofHours(2)));
    }

    private static StandOutlook stand(String mix, double chance) {
        double[] all = new double[240];
        Arrays.fill(all, chance);
        return new StandOutlook(
                mix,
                START,
                all,
                all,
                Collections.nCopies(240, StandOutlook.EmergenceRange.NEVER),
                Collections.nCopies(240, new StandOutlook.Losses(0, 0, 0, 0)));
    }

    private static BufferedImage draw(FieldPanel panel) {
        return FieldChart.draw(panel, SampleCrew.DETROIT, UnitSystem.US_CUSTOMARY, Letters.kept());
    }

    private static int[] rows(BufferedImage image, int x, int fromUnit, int toUnit, Ink ink) {
        return IntStream.range(2 * fromUnit, 2 * toUnit)
                .filter(y -> (image.getRGB(x, y) & 0xFFFFFF) == (ink.color().getRGB() & 0xFFFFFF))
                .toArray();
    }

    /** The curve's panel runs from 36 units for certainty to 100 for none; two dots a unit. */
    @Test
    void theCurveLiesAtTheChance() {
        for (double chance : new double[] {0.2, 0.5, 0.9}) {
            int[] rows = rows(
                    draw(panel(chance, 0, new Figures.Range(0.1, 0.2, 0.25))),
                    MIDDLE_X,
                    36,
                    100,
                    Ink.AMOUNT);

            assertThat(IntStream.of(rows).average().orElseThrow() / 2)
                    .isBetween(99.0 - 64 * chance, 101.0 - 64 * chance);
        }
    }

    @Test
    void twiceTheRainIsABarTwiceAsHigh() {
        Figures.Range water = new Figures.Range(0.1, 0.2, 0.25);
        int small = rows(draw(panel(0.5, 6, water)), MIDDLE_X + 8, 126, 172, Ink.AMOUNT).length;
        int large = rows(draw(panel(0.5, 12, water)), MIDDLE_X + 8, 126, 172, Ink.AMOUNT).length;

        assertThat(small).isPositive();
        assertThat(large).isBetween(2 * small - 3, 2 * small + 3);
    }

    @Test
    void aWiderRangeOfWaterIsAWiderBand() {
        BufferedImage sure = draw(panel(0.5, 0, new Figures.Range(0.19, 0.2, 0.21)));
        BufferedImage unsure = draw(panel(0.5, 0, new Figures.Range(0.12, 0.2, 0.28)));

        int narrow = rows(sure, MIDDLE_X, 198, 264, Ink.RANGE).length;
        assertThat(rows(unsure, MIDDLE_X, 198, 264, Ink.RANGE).length).isGreaterThan(4 * narrow);
    }

    /** The second curve lies at 0.1, so the name of a chance of 0.3 stands where it runs. */
    @Test
    void theCurveOfAnotherMixDoesNotCrossTheNameOfTheNextChance() {
        BufferedImage image = draw(panel(0.3, 0, new Figures.Range(0.1, 0.2, 0.25)));

        int besideName = (int) IntStream.range(2 * 44, 2 * 72)
                .filter(x -> rows(image, x, 90, 97, Ink.CHANCE).length > 0)
                .count();
        int furtherOn = (int) IntStream.range(2 * 144, 2 * 172)
                .filter(x -> rows(image, x, 90, 97, Ink.CHANCE).length > 0)
                .count();
        assertThat(furtherOn).isPositive();
        assertThat(besideName).isZero();
    }

    /** Inks differ in grey by enough to be told apart without colour. */
    @Test
    void lineBandAndPaperDifferInLightness() {
        assertThat(grey(Ink.RANGE) - grey(Ink.AMOUNT)).isGreaterThan(90);
        assertThat(grey(Ink.PAPER) - grey(Ink.RANGE)).isGreaterThan(50);
        assertThat(grey(Ink.CHANCE) - grey(Ink.AMOUNT)).isGreaterThan(50);
    }

    /** Lightness by Rec. 601. */
    private static double grey(Ink ink) {
        return 0.299 * ink.color().getRed()
                + 0.587 * ink.color().getGreen()
                + 0.114 * ink.color().getBlue();
    }
}
