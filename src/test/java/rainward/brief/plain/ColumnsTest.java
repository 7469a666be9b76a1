package rainward.brief.plain;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Text for a screen of 72 columns. */
class ColumnsTest {

    @ParameterizedTest
    @CsvSource({"Mill 3, 6", "Zoë, 3", "'e\u0301', 1", "日本, 4", "\uD83C\uDF3E, 2"})
    void widthIs(String text, int columns) {
        assertThat(Columns.width(text)).isEqualTo(columns);
    }

    @Test
    void breaksBetweenWordsAndGoesOnUnderTheFirst() {
        String text = "word ".repeat(20).strip();

        List<String> lines = Columns.wrapped("- ", "  ", text);

        assertThat(lines).hasSize(2);
        assertThat(lines.get(0)).startsWith("- word").hasSizeLessThanOrEqualTo(72);
        assertThat(lines.get(1)).startsWith("  word");
    }

    @Test
    void noTextWhateverMakesAWiderLineAndNoneIsLost() {
        var luck = new SplittableRandom(20260716);
        for (int i = 0; i < 500; i++) {
            String text = IntStream.range(0, luck.nextInt(1, 30))
                    .mapToObj(w -> Character.toString(luck.nextInt(2) == 0 ? 'x' : 0x65E5)
                            .repeat(luck.nextInt(1, 90)))
                    .collect(Collectors.joining(" "));
            List<String> lines = Columns.wrapped("- ", "  ", text);

            assertThat(lines)
                    .allSatisfy(line -> assertThat(Columns.width(line)).isLessThanOrEqualTo(72));
            assertThat(String.join("", lines).replaceAll("[- ]", ""))
                    .isEqualTo(text.replace(" ", ""));
        }
    }
}
