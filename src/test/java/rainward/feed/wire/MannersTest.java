package rainward.feed.wire;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.net.URI;
import java.time.Duration;
import java.time.Instant;
import java.util.Locale;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rainward.farm.GeoPoint;
import rainward.feed.Sky;
import rainward.feed.terms.Addresses;
import rainward.feed.terms.FeedSettings;
import rainward.feed.terms.Pacing;
import rainward.feed.terms.Service;

/** Coordinates, addresses and headers as the services want them, in any language of the PC. */
class MannersTest {

    @ParameterizedTest
    @CsvSource({
        "42.123456, 42.1235", "42.10000, 42.1", "-84.20004, -84.2", "0.00001, 0", "-0.0, 0",
        "90, 90", "-180, -180", "0.0001, 0.0001", "100, 100", "-0.00004, 0"
    })
    void degreesHaveAtMostFourDecimalsAndNoTrailingZeros(double value, String written) {
        for (Locale locale : new Locale[] {
            Locale.ROOT, Locale.GERMANY, new Locale("ar", "EG"), new Locale("hi", "IN", "u-nu-deva")
        }) {
            Locale before = Locale.getDefault();
            Locale.setDefault(locale);
            try {
                assertThat(Addresses.degrees(value, 4)).isEqualTo(written);
                assertThat(Addresses.latLon(new GeoPoint(42.1, -84.2))).isEqualTo("42.1,-84.2");
            } finally {
                Locale.setDefault(before);
            }
        }
    }

    @Test
    void plainHttpIsForThisMachineOnly() {
        FeedSettings usual =
                FeedSettings.usual(new FeedSettings.Identity("Rainward/1", "a@b.example"));
        assertThat(usual.at(Service.NWS, URI.create("http://127.0.0.1:9"))
                        .address(Service.NWS_ALERTS))
                .isEqualTo(URI.create("http://127.0.0.1:9"));
        for (String bad : new String[] {
            "http://sky.example", "ftp://localhost", "sky.example", "http://127.example"
        }) {
            assertThatThrownBy(() -> usual.at(Service.NWS, URI.create(bad)))
                    .as(bad)
                    .hasMessageContaining("must begin with https://");
        }
    }

    @Test
    void whoAsksHasAContactInPlainAscii() {
        assertThatThrownBy(() -> new FeedSettings.Identity("Rainward", " "))
                .hasMessageContaining("contact is blank");
        assertThatThrownBy(() -> new FeedSettings.Identity("Rainward", "ren\u00e9@farm.example"))
                .hasMessageContaining("plain ASCII");
        assertThat(new FeedSettings.Identity("Rainward/1", "a@b.example").userAgent())
                .isEqualTo("Rainward/1 (a@b.example)");
    }

    @ParameterizedTest
    @CsvSource({
        "120, 120",
        "0, 0",
        "-5, 0",
        "99999999999, 86400",
        "99999999999999999999999999, 86400",
        "86401, 86400"
    })
    void waitsAreSecondsWithinADay(String header, long seconds) {
        assertThat(RetryAfter.parse(header, Sky.NOW)).contains(Duration.ofSeconds(seconds));
    }

    @Test
    void waitsMayBeDatesAndNonsenseIsIgnored() {
        Instant now = Instant.parse("2026-07-15T10:20:00Z");
        assertThat(RetryAfter.parse("Wed, 15 Jul 2026 10:21:30 GMT", now))
                .contains(Duration.ofSeconds(90));
        assertThat(RetryAfter.parse("Wed, 15 Jul 2026 09:00:00 GMT", now)).contains(Duration.ZERO);
        for (String nonsense : new String[] {"", "soon", "1.5", "NaN", "12 s", "Wed, 99 Foo"}) {
            assertThat(RetryAfter.parse(nonsense, now)).as(nonsense).isEqualTo(Optional.empty());
        }
    }

    @Test
    void theCircuitDoublesToSixHours() {
        assertThat(Breaker.circuit(4)).isEqualTo(Duration.ZERO);
        assertThat(Breaker.circuit(5)).isEqualTo(Duration.ofMinutes(15));
        assertThat(Breaker.circuit(6)).isEqualTo(Duration.ofMinutes(30));
        assertThat(Breaker.circuit(9)).isEqualTo(Duration.ofHours(4));
        assertThat(Breaker.circuit(10)).isEqualTo(Duration.ofHours(6));
        assertThat(Breaker.circuit(1000)).isEqualTo(Duration.ofHours(6));
    }

    @Test
    void waitsBetweenTriesAreJitteredAndTheSameForTheSameSeed() {
        var one = new Pacing(3, wait -> {});
        var same = new Pacing(3, wait -> {});
        for (int n = 0; n < 8; n++) {
            Duration wait = one.backOff(n);
            assertThat(wait).isEqualTo(same.backOff(n)).isLessThan(Duration.ofSeconds(60));
            assertThat(wait.toMillis()).isLessThan(2_000L << n);
        }
    }

    @Test
    void theLimitThatWasReachedSaysWhenToComeBack() {
        Instant now = Instant.parse("2026-07-15T10:20:00Z");
        assertThat(Refusals.resetNamed("Minutely API request limit exceeded", now.plusSeconds(7)))
                .contains(Instant.parse("2026-07-15T10:21:00Z"));
        assertThat(Refusals.resetNamed("Daily API request limit exceeded", now))
                .contains(Instant.parse("2026-07-16T00:00:00Z"));
    }
}
