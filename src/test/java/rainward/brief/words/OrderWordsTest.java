package rainward.brief.words;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import rainward.brief.Orders;
import rainward.farm.Operation;
import rainward.farm.Window;

class OrderWordsTest {

    private static String task(double drivingHours, double settingHours) {
        Instant eight = Instant.parse("2026-07-13T12:00:00Z");
        Orders.StageLine stage = new Orders.StageLine(
                "seed",
                Operation.SEED,
                new Orders.Hands("roller seeder", "Dell"),
                new Window(eight, eight.plusSeconds(3600)),
                drivingHours,
                settingHours,
                1);
        Orders.FieldLine line = new Orders.FieldLine(
                2,
                new Orders.Place("Mill 3", "Mill Pond", 1),
                List.of(stage),
                Optional.of(new Orders.Sown("clover", 0.7, false)),
                "");
        return OrderWords.task(new OrderWords.Task(stage, line));
    }

    @Test
    void aChangeOfMixIsToldAfterTheRoad() {
        assertThat(task(0.25, 2 / 3.0))
                .isEqualTo("seed: clover, Mill 3 (Mill Pond), roller seeder,"
                        + " 15 min to get there, 40 min to change the mix");
        assertThat(task(0, 0)).isEqualTo("seed: clover, Mill 3 (Mill Pond), roller seeder");
    }
}
