package rainward.brief.page;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import rainward.brief.Alert;
import rainward.brief.AlertDays;
import rainward.brief.Golden;
import rainward.brief.plain.AlertText;
import rainward.brief.plain.Columns;
import rainward.farm.UnitSystem;

/** Alerts as text and as page. */
class AlertPagesTest {

    static Stream<String> alerts() {
        return AlertDays.all().keySet().stream();
    }

    private static Alert alert(String name) {
        return AlertDays.alert(name);
    }

    @ParameterizedTest
    @MethodSource("alerts")
    void readsAndLooksAsKept(String name) {
        Golden.check("alert/" + name + ".txt", AlertText.of(alert(name), UnitSystem.US_CUSTOMARY));
        Golden.check("alert/" + name + ".html", AlertHtml.of(alert(name), UnitSystem.US_CUSTOMARY));
    }

    @ParameterizedTest
    @MethodSource("alerts")
    void noLineIsWiderThan72Columns(String name) {
        assertThat(AlertText.of(alert(name), UnitSystem.METRIC).lines())
                .allSatisfy(
                        line -> assertThat(Columns.width(line)).as(line).isLessThanOrEqualTo(72));
    }

    @Test
    void allMailsOfOneWindowShareASubject() {
        assertThat(Stream.of(AlertDays.opened(), AlertDays.changed(), AlertDays.closed())
                        .map(alert -> AlertText.subject(alert, UnitSystem.US_CUSTOMARY))
                        .distinct())
                .containsExactly("Storm window: Mill Pond and Otter Creek");
    }

    @Test
    void tellsLastSafeStartOfEachFieldThatFitsAndWhatToLeave() {
        String text =
                AlertText.of(AlertDays.opened(), UnitSystem.US_CUSTOMARY).replaceAll("\n {2}", " ");

        assertThat(text)
                .contains("Otter Flat: planned Fri 6:40 am, start at the latest Sat 5:20 am")
                .contains("Mill 5: planned Fri 11:50 am, start at the latest Sat 8:50 am")
                .containsPattern("LEAVE\n- Otter Knoll")
                .contains("Why: the chance rose from 74% to 91%")
                .contains("Lightning")
                .contains("hard enough to wash out: 17%");
    }

    @Test
    void closingTellsThatTheOrderHolds() {
        assertThat(AlertText.of(AlertDays.closed(), UnitSystem.US_CUSTOMARY))
                .contains("is closed", "Why: the rain has come", "the order of the last brief")
                .doesNotContain("FITS BEFORE IT");
    }
}
