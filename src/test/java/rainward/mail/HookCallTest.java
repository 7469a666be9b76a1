package rainward.mail;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import rainward.brief.BriefDays;
import rainward.brief.post.Letter;
import rainward.brief.post.LetterMaker;

/** What a program reads of a brief. */
class HookCallTest {

    private static JsonNode call(String day) throws Exception {
        Letter letter = new LetterMaker(BundledLettering.read())
                .brief(BriefDays.day(day).brief(), Mails.BOYD)
                .orElseThrow();
        return new ObjectMapper().readTree(HookCall.bytes(letter));
    }

    @Test
    void aBriefHasALineForEachStageWithHandsHoursAndChance() throws Exception {
        JsonNode first = call("dry-storm-in-three-days").path("lines").path(0);
        JsonNode seeding = call("dry-storm-in-three-days").path("lines").path(1);

        List<String> keys = new ArrayList<>();
        seeding.fieldNames().forEachRemaining(keys::add);
        assertThat(keys)
                .containsExactly(
                        "rank",
                        "field",
                        "property",
                        "stage",
                        "machine",
                        "person",
                        "mix",
                        "from",
                        "to",
                        "chance");
        assertThat(first.path("stage").asText()).isEqualTo("till");
        assertThat(first.has("chance")).isFalse();
        assertThat(seeding.path("from").asText()).isEqualTo("2026-07-16T09:00-04:00");
        assertThat(seeding.path("chance").asDouble()).isEqualTo(0.71);
    }

    @Test
    void aDayWithoutWorkHasNoLines() throws Exception {
        assertThat(call("nothing-pending").path("lines").isEmpty()).isTrue();
    }
}
