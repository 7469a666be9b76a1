package rainward.daemon.settings.text;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class KeyLinesTest {

    private static final KeyLines LINES = KeyLines.of("""
            top = 1
            [farm]
            # name = "not this"
            name = "this"
            days = [
              "monday", # [a bracket in a remark
              "a = b",
            ]
            note = \"""
            zone = "not this"
            \"""
            zone = "this"
            [[recipe]]
            name = "first"
            [[recipe.stage]]
            name = "a"
            [[recipe.stage]]
            name = "b"
            [[recipe]]
            name = "second"
            [[recipe.stage]]
            "name" = "c"
            place = { latitude = 1, longitude = 2 }
            """.lines().toList());

    @ParameterizedTest
    @CsvSource({
        "top, 1",
        "farm, 2",
        "farm.name, 4",
        "farm.days, 5",
        "farm.zone, 12",
        "recipe[1].name, 14",
        "recipe[1].stage[1].name, 16",
        "recipe[1].stage[2].name, 18",
        "recipe[2].name, 20",
        "recipe[2].stage[1].name, 22",
    })
    void keyIsFoundWhereItStands(String path, int line) {
        assertThat(LINES.of(path)).isEqualTo(line);
    }

    @ParameterizedTest
    @CsvSource({
        "farm.missing, 2",
        "recipe[1].stage[2].missing, 17",
        "recipe[2].stage[1].place.latitude, 23",
        "farm.days[2], 5",
    })
    void whatHasNoLineOfItsOwnIsToldAtWhatHoldsIt(String path, int line) {
        assertThat(LINES.of(path)).isEqualTo(line);
    }

    @Test
    void tableThatIsNotThereHasNoLine() {
        assertThat(LINES.of("mail.host")).isZero();
    }
}
