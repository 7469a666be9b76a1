package rainward.farm;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class NearestNameTest {

    private static final List<String> KNOWN = List.of("name", "width", "speed", "road_speed");

    @ParameterizedTest
    @CsvSource({
        "widht, width",
        "Width, width",
        "with, width",
        "roadspeed, road_speed",
        "sped, speed",
    })
    void slipOfAFewLettersFindsTheName(String written, String meant) {
        assertThat(NearestName.of(written, KNOWN)).contains(meant);
    }

    @ParameterizedTest
    @CsvSource({"fertilizer", "x"})
    void strangeWordFindsNothing(String written) {
        assertThat(NearestName.of(written, KNOWN)).isEmpty();
    }
}
