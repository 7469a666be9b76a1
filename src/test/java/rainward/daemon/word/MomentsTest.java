package rainward.daemon.word;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneId;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rainward.daemon.office.Refusal;

class MomentsTest {

    private static final ZoneId FARM = ZoneId.of("America/Detroit");
    private static final LocalDate TODAY = LocalDate.of(2026, 7, 14);

    @ParameterizedTest
    @CsvSource({
        "14:30, 2026-07-14T14:30",
        "2:30 pm, 2026-07-14T14:30",
        "7:05am, 2026-07-14T07:05",
        "7 PM, 2026-07-14T19:00",
        "12:10 am, 2026-07-14T00:10",
        "12 p.m., 2026-07-14T12:00",
        "2026-07-12, 2026-07-12T12:00",
        "2026-07-12 06:15, 2026-07-12T06:15",
        "2026-07-12T06:15, 2026-07-12T06:15",
        "2026-07-12 6:15 pm, 2026-07-12T18:15"
    })
    void timeIsReadAsPeopleWriteIt(String typed, LocalDateTime local) {
        assertThat(Moments.of(typed, TODAY, FARM)).isEqualTo(local.atZone(FARM).toInstant());
    }

    @Test
    void whatIsNoTimeIsRefusedWithWhatWouldBeRight() {
        for (String typed : new String[] {"13:00 pm", "0 am", "25:00", "soon", "2:75 pm", "pm"}) {
            assertThatThrownBy(() -> Moments.of(typed, TODAY, FARM))
                    .isInstanceOf(Refusal.class)
                    .hasMessageContaining("'" + typed + "' is no time: write 14:30 or 2:30 pm");
        }
    }
}
