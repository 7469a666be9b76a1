package rainward.replay.crew;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;

class GivenOrderTest {

    private final GivenOrder order = new GivenOrder();

    @Test
    void whatIsDoneMovesNothing() {
        order.tell(List.of("A", "B", "C"), Set.of("A", "B", "C"));
        order.tell(List.of("B", "C"), Set.of("B", "C"));

        assertThat(order.changes()).isZero();
    }

    @Test
    void oneFieldPutFirstIsOneChange() {
        order.tell(List.of("A", "B", "C", "D"), Set.of("A", "B", "C", "D"));
        order.tell(List.of("D", "A", "B", "C"), Set.of("A", "B", "C", "D"));

        assertThat(order.changes()).isEqualTo(1);
    }

    @Test
    void fieldThatIsOpenAndLeftOutIsAChange() {
        order.tell(List.of("A", "B"), Set.of("A", "B"));
        order.tell(List.of("B"), Set.of("A", "B"));

        assertThat(order.changes()).isEqualTo(1);
    }
}
