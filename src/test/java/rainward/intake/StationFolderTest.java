package rainward.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rainward.soil.verify.StationYear;
import rainward.weather.climate.TempRange;

/** Station files in the daily form of the US Climate Reference Network. */
class StationFolderTest {

    private static final String HEADER = "lst_date,longitude,latitude,t_daily_max,t_daily_min,"
            + "p_daily_calc,solarad_daily,rh_daily_avg,soil_moisture_5_daily,soil_temp_5_daily\n";

    @TempDir
    private Path folder;

    private StationYear read(String lines) throws IOException {
        Files.writeString(folder.resolve("Brook_Hill.csv"), HEADER + lines);
        return new StationFolder(folder).stations().get(0);
    }

    @Test
    void aDayComesBackInOurUnits() throws IOException {
        StationYear year = read("2020-05-01,-85.5,42.4,18.2,4.1,12.4,20.5,64,0.281,12.5\n"
                + "2020-05-02,-85.5,42.4,18.2,4.1,0,20.5,64,0.281,12.5\n");

        assertThat(year.station()).isEqualTo("Brook_Hill");
        assertThat(year.place().latitudeDeg()).isEqualTo(42.4);
        assertThat(year.days().get(0).weather().rainMm()).hasValue(12.4);
        assertThat(year.days().get(0).weather().sky().humidityFraction()).hasValue(0.64);
        assertThat(year.days().get(0).moisture5Fraction()).hasValue(0.281);
    }

    @Test
    void whatWasNotMeasuredIsAbsent() throws IOException {
        StationYear year = read("2020-05-01,-85.5,42.4,18.2,,-9999,,,,-9999\n"
                + "2020-05-02,-85.5,42.4,18.2,4.1,0,20.5,64,0.281,12.5\n");

        assertThat(year.days().get(0).weather().temps()).isEmpty();
        assertThat(year.days().get(0).weather().rainMm()).isEmpty();
        assertThat(year.days().get(0).soilTemp5C()).isEmpty();
    }

    @Test
    void aMissingDayIsFilledWithNothingKnown() throws IOException {
        StationYear year = read("2020-05-01,-85.5,42.4,18.2,4.1,0,20.5,64,0.281,12.5\n"
                + "2020-05-03,-85.5,42.4,18.2,4.1,0,20.5,64,0.281,12.5\n");

        assertThat(year.days()).hasSize(3);
        assertThat(year.days().get(1).moisture5Fraction()).isEmpty();
    }

    @Test
    void aBadCellIsToldWithFileLineAndRemedy() {
        assertThatThrownBy(() -> read("2020-05-01,-85.5,42.4,warm,4.1,0,20.5,64,0.281,12.5\n"))
                .isInstanceOf(BadTableException.class)
                .hasMessageContaining("Brook_Hill.csv")
                .hasMessageContaining("t_daily_max")
                .hasMessageContaining("must be a number");
        assertThatThrownBy(() -> read("2020-05-01,-85.5,42.4,18,4.1,0,20.5,64,28.1,12.5\n"))
                .hasMessageContaining("moisture5Fraction is 28.1, must be 0.0 to 1.0");
        assertThatThrownBy(() -> read("May 1,-85.5,42.4,18,4.1,0,20.5,64,0.281,12.5\n"))
                .hasMessageContaining("lst_date is 'May 1', must be a day");
    }

    @Test
    void aFolderWithoutStationsIsRefused() {
        assertThatThrownBy(() -> new StationFolder(folder).stations())
                .hasMessageContaining("holds no station file");
        assertThatThrownBy(() -> new StationFolder(folder.resolve("nowhere")).stations())
                .hasMessageContaining("is no folder");
    }

    @Test
    void aMissingColumnIsNamed() throws IOException {
        Files.writeString(folder.resolve("x.csv"), "lst_date,longitude\n2020-05-01,-85\n");

        assertThatThrownBy(() -> new StationFolder(folder).stations())
                .hasMessageContaining("line 1: column latitude is missing");
    }

    private StationYear readWhole(String text) throws IOException {
        Files.writeString(folder.resolve("Brook_Hill.csv"), text);
        return new StationFolder(folder).stations().get(0);
    }

    /** Elements and units as the readme of GHCN-Daily gives them: PRCP, TMAX and TMIN in tenths. */
    @Test
    void ghcnDailyIsReadInTenths() throws IOException {
        StationYear year = readWhole(
                "\"STATION\",\"DATE\",\"LATITUDE\",\"LONGITUDE\",\"ELEVATION\",\"NAME\",\"PRCP\","
                        + "\"PRCP_ATTRIBUTES\",\"TMAX\",\"TMAX_ATTRIBUTES\",\"TMIN\"\n"
                        + "\"X1\",\"2019-07-01\",\"42.4\",\"-85.5\",\"270.1\",\"BROOK HILL, MI US\","
                        + "\"  254\",\",,N\",\"  283\",\",,N\",\"  156\"\n"
                        + "\"X1\",\"2019-07-02\",\"42.4\",\"-85.5\",\"270.1\",\"BROOK HILL, MI US\","
                        + "\"\",\"\",\"-9999\",\"\",\"  156\"\n");

        assertThat(year.place().longitudeDeg()).isEqualTo(-85.5);
        assertThat(year.days().get(0).weather().rainMm()).hasValue(25.4);
        assertThat(year.days().get(0).weather().temps()).hasValue(new TempRange(15.6, 28.3));
        assertThat(year.days().get(1).weather().rainMm()).isEmpty();
        assertThat(year.days().get(1).weather().temps()).isEmpty();
    }

    @Test
    void ghcnDailyInWholeUnitsIsRefused() {
        assertThatThrownBy(() -> readWhole("DATE,LATITUDE,LONGITUDE,PRCP,TMAX,TMIN\n"
                        + "2019-07-01,42.4,-85.5,25.4,283,156\n"))
                .hasMessageContaining("line 2, column PRCP is '25.4'")
                .hasMessageContaining("whole number of tenths");
    }

    @Test
    void ourOwnFormTakesBothUnits() throws IOException {
        StationYear si = readWhole("day,latitude,longitude,rain_mm,low_c,high_c\n"
                + "2019-07-01,42.4,-85.5,25.4,15,30\n2019-07-02,42.4,-85.5,0,15,30\n");
        StationYear us = readWhole("day,latitude,longitude,rain_in,low_f,high_f\n"
                + "2019-07-01,42.4,-85.5,1.0,59,86\n2019-07-02,42.4,-85.5,0,59,86\n");

        assertThat(us.days()).isEqualTo(si.days());
        assertThatThrownBy(() -> readWhole("day,latitude,longitude,rain_mm,high_c\n"
                        + "2019-07-01,42.4,-85.5,25.4,30\n"))
                .hasMessageContaining("column low_c or low_f is missing");
    }

    @Test
    void aHeaderOfNoFormIsRefusedWithThoseThereAre() {
        assertThatThrownBy(() -> readWhole("when,rain\n2019-07-01,3\n"))
                .hasMessageContaining("line 1")
                .hasMessageContaining("lst_date")
                .hasMessageContaining("DATE (GHCN-Daily) or day");
    }

    @Test
    void aFileOfManyYearsIsPartedByYear() throws IOException {
        Files.writeString(
                folder.resolve("a.csv"),
                "day,latitude,longitude,rain_mm,low_c,high_c\n"
                        + "2018-12-30,42.4,-85.5,0,1,2\n2018-12-31,42.4,-85.5,0,1,2\n"
                        + "2019-01-01,42.4,-85.5,0,1,2\n2019-01-02,42.4,-85.5,3,1,2\n");

        assertThat(new StationFolder(folder).years())
                .extracting(y -> y.days().get(0).weather().day())
                .containsExactly(LocalDate.of(2018, 12, 30), LocalDate.of(2019, 1, 1));
    }
}
