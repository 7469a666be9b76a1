package rainward.queue.reasons;

import static org.assertj.core.api.Assertions.assertThat;
import static rainward.queue.plan.SmallFarm.plot;

import java.time.LocalTime;
import org.junit.jupiter.api.Test;
import rainward.farm.FieldState;
import rainward.farm.Machine;
import rainward.farm.Person;
import rainward.queue.plan.Planner;
import rainward.queue.plan.SmallFarm;
import rainward.queue.problem.Plan;
import rainward.queue.problem.PlanProblem;
import rainward.queue.search.Effort;

class WhatIfTest {

    private static final PlanProblem PROBLEM =
            new SmallFarm().with(plot("F1", 2), plot("F12", 3)).problem();

    @Test
    void severalChangesAreMadeAtOnce() {
        WhatIf then = WhatIf.of(PROBLEM, "hold F12; add tiller; start 06:00");
        assertThat(then.faults()).isEmpty();
        assertThat(then.problem().crew().hours().start()).isEqualTo(LocalTime.of(6, 0));
        assertThat(then.problem().crew().machines())
                .extracting(Machine::name)
                .containsExactly("tiller", "seeder", "tiller 2");
        Plan plan = Planner.plan(then.problem(), Effort.tries(1, 100));
        assertThat(plan.leftOut()).extracting(Plan.LeftOut::field).containsExactly("F12");
    }

    @Test
    void namesMayBeCutShortOrMeantByOneOfTheirWords() {
        SmallFarm farm = new SmallFarm().with(plot("NF4 Ditch", 2), plot("NF5 East Slope", 2));
        farm.machines.add(SmallFarm.machine("roller packer", rainward.farm.Operation.FIRM));
        WhatIf then = WhatIf.of(farm.problem(), "pin nf4; drop east; add packer; without An");
        assertThat(then.faults()).isEmpty();
        assertThat(then.problem().jobs().get(0).field().status().pinnedFirst()).isTrue();
        assertThat(then.problem().jobs().get(1).field().status().state())
                .isEqualTo(FieldState.DROPPED);
        assertThat(then.problem().crew().machines())
                .extracting(Machine::name)
                .contains("roller packer 2");
        assertThat(then.problem().crew().people()).extracting(Person::name).containsExactly("Bo");
    }

    @Test
    void aNameThatMeansSeveralOrNoneIsAnsweredWithThoseThereAre() {
        SmallFarm farm = new SmallFarm().with(plot("NF4 Ditch", 2), plot("NF5 East Slope", 2));
        assertThat(WhatIf.of(farm.problem(), "pin NF; add plough").faults())
                .containsExactly(
                        "field in the queue 'NF' can be any of NF4 Ditch, NF5 East Slope: type"
                                + " more of the name",
                        "no machine is called 'plough'; there are tiller, seeder; another is"
                                + " added like one of these");
    }

    @Test
    void theProblemItselfStaysAsItWas() {
        WhatIf.of(PROBLEM, "drop F1; without tiller");
        assertThat(PROBLEM.crew().machines()).hasSize(2);
        assertThat(PROBLEM.jobs().get(0).field().status().state()).isEqualTo(FieldState.PENDING);
    }

    @Test
    void whoeverRunsAMachineRunsAnotherLikeItToo() {
        SmallFarm farm = new SmallFarm().with(plot("F1", 2));
        farm.people.set(0, SmallFarm.person("Ann", "tiller"));
        WhatIf then = WhatIf.of(farm.problem(), "add tiller");
        Person ann = then.problem().crew().people().get(0);
        assertThat(ann.canRun("tiller 2")).isTrue();
    }

    @Test
    void whatCannotBeReadIsNamedWithWhatWouldBeRight() {
        WhatIf then =
                WhatIf.of(PROBLEM, "hold F99; start six; dance; add harrow; end 05:00; pin F1");
        assertThat(then.faults()).hasSize(5);
        assertThat(then.faults().get(0)).contains("F99");
        assertThat(then.faults().get(1)).contains("start six").contains("start HH:MM");
        assertThat(then.faults().get(2)).contains("dance");
        assertThat(then.faults().get(3)).contains("harrow");
        assertThat(then.faults().get(4)).contains("not after its start");
        assertThat(then.problem().jobs().get(0).field().status().pinnedFirst()).isTrue();
    }
}
