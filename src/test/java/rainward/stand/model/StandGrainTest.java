package rainward.stand.model;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import rainward.farm.Mix;
import rainward.intake.Shipped;
import rainward.stand.RandomSeedbed;
import rainward.stand.Seedbeds;
import rainward.stand.StandCase;
import rainward.stand.StandOutlook;
import rainward.stand.StandRules;

/** What coarse steps and few classes cost in accuracy. */
class StandGrainTest {
    private static final StandRules USUAL = StandRules.DEFAULT;

    /** Two hundred traces leave a chance of one half uncertain by 0.035. */
    @Test
    void fourHoursAndFourClassesMoveTheChanceByLessThanTheTracesDo() {
        Mix mix = Shipped.mix("three brassicas");
        StandModel fine = new StandModel(with(new StandRules.Grain(1, 40)));
        double off = 0;
        int count = 0;
        for (int i = 0; i < 4; i++) {
            StandCase question = RandomSeedbed.of(new SplittableRandom(i), 240, 100)
                    .sown(mix, Seedbeds.FIRM_AND_FLAT, 168);
            StandOutlook exact = fine.outlook(question);
            StandOutlook coarse = StandModel.usual().outlook(question);
            for (int h = 0; h < 168; h++) {
                off += Math.abs(exact.chance()[h] - coarse.chance()[h]);
                count++;
            }
        }
        assertThat(off / count).isLessThan(0.0175);
    }

    /** Traces whose length is no multiple of a step lose at most the last hours. */
    @Test
    void anOddNumberOfHoursIsNoTrouble() {
        StandOutlook outlook =
                Seedbeds.steady(241, -0.03, 25).outlook(Seedbeds.alone("turnip"), 241);
        assertThat(outlook.seedingHours()).isEqualTo(241);
        assertThat(outlook.chance()[0]).isEqualTo(1);
    }

    private static StandRules with(StandRules.Grain grain) {
        return new StandRules(
                grain, USUAL.fieldFraction(), USUAL.seedling(), USUAL.damage(), USUAL.checkDays());
    }
}
