package rainward.weather.sky;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.ToDoubleFunction;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import rainward.farm.GeoPoint;

/**
 * Radiation under cloud beside the sun measured at Bondville, Illinois, May to September 1998 (NOAA
 * land-surface test case). Nobody wrote the sky cover down there; what tells it is the measured
 * longwave radiation of the sky, which a second instrument saw: its emissivity above that of a
 * clear sky (Brutsaert 1975, Water Resour. Res. 11:742-744, constant from memory) over what is left
 * to a black one. High and broken cloud hardly shows in it, so that it is less than the sky cover
 * of a forecast wherever the sky is not low and grey. Nothing is fitted.
 */
class BondvilleCloudTest {

    static final Path FILE = Path.of("../shared/data/bondville-1998/halfhourly.dat");
    static final GeoPoint PLACE = new GeoPoint(40.01, -88.37);
    static final ZoneOffset ZONE = ZoneOffset.ofHours(-6);
    static final LocalDate FIRST = LocalDate.of(1998, 5, 1);
    static final int DAYS = 150;
    static final double ELEVATION_M = 213;

    /** An hour by day: what a clear sky sends, what was measured, what the sky gives back. */
    record Hour(
            double clearMjPerM2, double seenMjPerM2, double emissivity, double clearEmissivity) {

        double cloud() {
            double above = (emissivity - clearEmissivity) / (1 - clearEmissivity);
            return Math.max(0, Math.min(1, above));
        }

        double reckonedMjPerM2() {
            return SkyRadiation.throughCloudFraction(cloud()) * clearMjPerM2;
        }
    }

    static final List<Hour> HOURS = new ArrayList<>();

    @BeforeAll
    static void read() throws IOException {
        assumeTrue(Files.exists(FILE), "no " + FILE + ": recorded weather is not on this machine");
        HOURS.clear();
        List<String> lines = Files.readAllLines(FILE);
        int start = 48 * (FIRST.getDayOfYear() - 1);
        Instant midnight = FIRST.atStartOfDay().toInstant(ZONE);
        for (int h = 0; h < 24 * DAYS; h++) {
            double clear = SkyRadiation.clearSkyMjPerM2(
                    SolarGeometry.extraterrestrialHourMjPerM2(
                            midnight.plus(Duration.ofHours(h)), PLACE),
                    ELEVATION_M);
            if (clear > 0.5) {
                HOURS.add(hour(clear, row(lines, start + 2 * h), row(lines, start + 2 * h + 1)));
            }
        }
    }

    private static double[] row(List<String> lines, int at) {
        String[] cells = lines.get(at).trim().split("\\s+");
        return new double[] {
            Double.parseDouble(cells[4]),
            Math.min(100, Double.parseDouble(cells[5])),
            Math.max(0, Double.parseDouble(cells[7])),
            Double.parseDouble(cells[29])
        };
    }

    private static Hour hour(double clear, double[] first, double[] second) {
        double tempC = (first[0] + second[0]) / 2;
        double vapourHpa = AirPhysics.saturationKpa(tempC) * 10 * (first[1] + second[1]) / 2 / 100;
        double black = 5.67e-8 * Math.pow(tempC + 273.15, 4);
        return new Hour(
                clear,
                (first[2] + second[2]) / 2 * 0.0036,
                (first[3] + second[3]) / 2 / black,
                1.24 * Math.pow(vapourHpa / (tempC + 273.15), 1.0 / 7));
    }

    static double sum(List<Hour> hours, ToDoubleFunction<Hour> of) {
        return hours.stream().mapToDouble(of).sum();
    }

    static double share(List<Hour> hours, ToDoubleFunction<Hour> of) {
        return sum(hours, of) / sum(hours, Hour::clearMjPerM2);
    }

    /**
     * A sky that gives back 97 % of what a black one would is low and grey all over: the one sky
     * cover that longwave proves. Measured 0.17 of the clear sun, and 0.25 is reckoned.
     */
    @Test
    void underAGreySkyATwelfthOfTheClearSunTooMuchIsReckoned() {
        List<Hour> grey = HOURS.stream().filter(h -> h.emissivity() >= 0.97).toList();
        double seen = share(grey, Hour::seenMjPerM2);
        double reckoned = SkyRadiation.throughCloudFraction(1);
        System.out.println(String.format(
                Locale.ROOT,
                "grey hours: %d, seen %.3f of the clear sun, reckoned %.3f",
                grey.size(),
                seen,
                reckoned));
        assertThat(grey.size()).isGreaterThan(100);
        assertThat(reckoned - seen).isBetween(0.0, 0.12);
    }

    /** With longwave as the sky cover, too little cloud and so too much sun is expected. */
    @Test
    void moreCloudLetsLessSunThroughInEveryClass() {
        double before = 2;
        for (int eighth = 0; eighth <= 8; eighth += 2) {
            double least = (eighth - 1) / 8.0;
            double most = (eighth + 1) / 8.0;
            List<Hour> like = HOURS.stream()
                    .filter(h -> h.cloud() >= least && h.cloud() < most)
                    .toList();
            double seen = share(like, Hour::seenMjPerM2);
            System.out.println(String.format(
                    Locale.ROOT,
                    "longwave cloud about %d/8: %d hours, seen %.2f, reckoned %.2f",
                    eighth,
                    like.size(),
                    seen,
                    share(like, Hour::reckonedMjPerM2)));
            assertThat(seen).isLessThan(before);
            before = seen;
        }
        double bias = sum(HOURS, Hour::reckonedMjPerM2) / sum(HOURS, Hour::seenMjPerM2) - 1;
        double square = sum(HOURS, h -> Math.pow(h.reckonedMjPerM2() - h.seenMjPerM2(), 2));
        System.out.println(String.format(
                Locale.ROOT,
                "all %d hours: bias %+.1f %%, rms %.3f MJ/m2",
                HOURS.size(),
                100 * bias,
                Math.sqrt(square / HOURS.size())));
        assertThat(bias).isBetween(0.0, 0.5);
    }
}
