package rainward.queue.search;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class EffortTest {

    @Test
    void triesThatTakeLongerAreFewerAndNeverMore() {
        Effort effort = Effort.tries(7, 1_000);
        assertThat(effort.forTriesThatCost(4).evaluations()).isEqualTo(250);
        assertThat(effort.forTriesThatCost(0.5).evaluations()).isEqualTo(1_000);
        assertThat(effort.forTriesThatCost(1e9).evaluations()).isPositive();
        assertThat(effort.forTriesThatCost(4).seed()).isEqualTo(7);
    }

    @Test
    void anotherBudgetThanTriesStaysAsItIs() {
        Effort half = Effort.until(1, () -> 0.5).forTriesThatCost(25);
        assertThat(half.spent(1_000_000)).isEqualTo(0.5);
    }
}
