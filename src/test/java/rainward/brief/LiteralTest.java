package rainward.brief;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Names that try to be more than names. */
class LiteralTest {

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "Mill 3                  | Mill 3",
                "Żółw & Sønn <b>         | Żółw & Sønn <b>",
                "quote ' and \"          | quote ' and \"",
            })
    void ordinaryNamesStayAsTheyAre(String name, String shown) {
        assertThat(Literal.of(name)).isEqualTo(shown);
    }

    @Test
    void aLineBreakIsShownAndBreaksNothing() {
        assertThat(Literal.of("Mill\r\nBcc: all@example.org"))
                .isEqualTo("Mill\\r\\nBcc: all@example.org");
        assertThat(Literal.of("a\u2028b\u2029c\u0085d\u0000e"))
                .isEqualTo("a\\u2028b\\u2029c\\u0085d\\u0000e");
    }

    @Test
    void aMarkThatTurnsReadingIsShownAndTurnsNothing() {
        assertThat(Literal.of("\u202Emill\u202C \u2067x\u2069 \u200Fy"))
                .isEqualTo("\\u202emill\\u202c \\u2067x\\u2069 \\u200fy");
    }

    @Test
    void anEmojiOfSeveralPartsStaysWhole() {
        String farmer = "\uD83E\uDDD1\u200D\uD83C\uDF3E";

        assertThat(Literal.of("Mill " + farmer)).isEqualTo("Mill " + farmer);
    }

    @Test
    void halfACharacterIsShownAsItsCode() {
        assertThat(Literal.of("a\uD83Eb")).isEqualTo("a\\ud83eb");
    }

    @Test
    void whatIsHarmlessOnceStaysSo() {
        String once = Literal.of("x\r\n\u202E\uD83E\uDDD1");

        assertThat(Literal.of(once)).isEqualTo(once);
    }
}
