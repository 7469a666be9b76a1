package rainward.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import rainward.soil.verify.SoilReport;
import rainward.soil.verify.SoilVerification;

/**
 * The column against the 5 cm sensors of the US Climate Reference Network (NOAA, daily 2020). No
 * station is fitted: one texture, published parameters.
 */
class SoilVerificationTest {

    private static final Path STATIONS = Path.of("../shared/data/uscrn-2020");

    private static SoilReport report;

    @BeforeAll
    static void runAllStations() {
        assumeTrue(Files.isDirectory(STATIONS), "skipped: no measured stations at " + STATIONS);
        report = SoilVerification.of(new StationFolder(STATIONS).stations());
        report.stations().forEach(SoilVerificationTest::print);
        print(report.median());
        System.out.println(report.wetting() + " " + report.median().told());
    }

    private static void print(SoilReport.Figures f) {
        System.out.printf(
                Locale.ROOT,
                "%-26s %3d  r %.3f (bucket %.3f)  ub %.4f (bucket %.4f, 7 days ago %.4f)"
                        + "  bias %+.3f  soil %.2f C%n",
                f.station(),
                f.days(),
                f.r(),
                f.bucketR(),
                f.ubRmse(),
                f.bucketUbRmse(),
                f.persistenceUbRmse(),
                f.bias(),
                f.soilTempRmseC());
    }

    @Test
    void waterAtFiveCentimetresFollowsTheSensor() {
        assertThat(report.median().r()).isGreaterThanOrEqualTo(0.80);
        assertThat(report.median().ubRmse()).isLessThanOrEqualTo(0.042);
    }

    @Test
    void theColumnBeatsTheBucketAndPersistence() {
        SoilReport.Figures median = report.median();
        assertThat(median.r()).isGreaterThan(median.bucketR());
        assertThat(median.ubRmse())
                .isLessThan(median.bucketUbRmse())
                .isLessThan(median.persistenceUbRmse())
                .isLessThan(median.told().startPersistenceUbRmse());
        assertThat(median.told().dayUbRmse()).isLessThan(median.told().dayPersistenceUbRmse());
        assertThat(median.told().weekUbRmse()).isLessThan(median.persistenceUbRmse());
    }

    @Test
    void rainsAfterADrySpellWetTheTopAsOftenAsMeasured() {
        SoilReport.Wetting wetting = report.wetting();
        assertThat(wetting.events()).isGreaterThan(50);
        assertThat(wetting.modelShare()).isCloseTo(wetting.measuredShare(), within(0.05));
    }

    @Test
    void soilTemperatureFollowsTheSensor() {
        assertThat(report.median().soilTempRmseC()).isLessThanOrEqualTo(2.0);
    }
}
