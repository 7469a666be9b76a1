package rainward.daemon;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.time.Instant;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;

/** The closing list of a week in which services fail again and again. */
class FaultWeekIT {

    @Test
    void everyDayOfTheWeekHasAPlanAndSaysWhatItWasMadeFrom() {
        Desk.Said said = Desk.plain(Instant.EPOCH, "verify", "week", "--json");

        assertThat(said.exitCode()).isZero();
        JsonNode report = said.json();
        assertThat(report.path("days")).hasSize(7);
        assertThat(report.path("without").asInt()).isZero();
        TreeSet<String> sources = new TreeSet<>();
        TreeSet<String> faults = new TreeSet<>();
        for (JsonNode day : report.path("days")) {
            assertThat(day.path("planItems").asInt()).as(day.toString()).isPositive();
            assertThat(day.path("sources")).hasSize(6);
            day.path("sources").forEach(source -> sources.add(source.asText()));
            day.path("faults").fieldNames().forEachRemaining(faults::add);
            assertThat(day.path("observedRain")).isNotEmpty();
            // Six properties, 24 pulls, two services with their tries, alerts of each.
            int asked = 0;
            for (JsonNode count : day.path("requests")) {
                asked += count.asInt();
            }
            assertThat(asked).isBetween(1, 900);
        }
        assertThat(sources).containsExactly("met-norway", "nws");
        assertThat(faults).hasSizeGreaterThan(20);
        // The fifth day begins in an outage of every service, six hours old at its brief: told,
        // with
        // the time since when, and the plan rests on what was had before.
        assertThat(report.path("days").get(4).path("told").toString())
                .contains("nws gives nothing since", "met-norway gives nothing since");
        assertThat(report.path("days").get(4).path("forecastAgeH").asDouble()).isBetween(6.0, 36.0);
        // The server's clock is not the one that runs ahead; nobody is told to set his.
        assertThat(said.out()).doesNotContain("clock");
    }
}
