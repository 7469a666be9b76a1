package rainward.replay.truth;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Month;
import org.junit.jupiter.api.Test;
import rainward.farm.GeoPoint;
import rainward.intake.ClimateTable;
import rainward.intake.TableFolder;
import rainward.soil.verify.StationYear;
import rainward.weather.climate.Climate;

class InventedStationTest {

    private static final Climate CLIMATE =
            new ClimateTable(TableFolder.onClassPath()).of("southern michigan");

    /** Two-state chain: p01 0.25 and p11 0.45 have a wet share 0.3125 and lag correlation 0.2. */
    @Test
    void wetDaysFollowAsTheChainOfTheTextbookDoes() {
        assertThat(InventedStation.chance(0.3125, false)).isCloseTo(0.25, within(1e-12));
        assertThat(InventedStation.chance(0.3125, true)).isCloseTo(0.45, within(1e-12));
    }

    @Test
    void manyJulysKeepTheClimateOfTheMonth() {
        double days = 0;
        double wet = 0;
        double mm = 0;
        double high = 0;
        for (int seed = 0; seed < 60; seed++) {
            StationYear year = InventedStation.of(CLIMATE, new GeoPoint(42, -84), 2020, seed);
            for (var day : year.days()) {
                if (day.weather().day().getMonth() == Month.JULY) {
                    days++;
                    wet += day.weather().rainMm().getAsDouble() > 0 ? 1 : 0;
                    mm += day.weather().rainMm().getAsDouble();
                    high += day.weather().temps().orElseThrow().airTempMaxC();
                }
            }
        }
        var july = CLIMATE.months().get(6);
        assertThat(wet / days).isCloseTo(july.wetDayFraction(), within(0.03));
        assertThat(mm / wet).isCloseTo(july.meanWetDayMm(), within(0.1 * july.meanWetDayMm()));
        assertThat(high / days).isCloseTo(july.airTempMaxC(), within(0.5));
    }

    @Test
    void sameSeedGivesTheSameDays() {
        GeoPoint place = new GeoPoint(42, -84);
        assertThat(InventedStation.of(CLIMATE, place, 2021, 9))
                .isEqualTo(InventedStation.of(CLIMATE, place, 2021, 9));
    }
}
