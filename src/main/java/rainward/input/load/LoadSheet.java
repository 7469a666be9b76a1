package rainward.input.load;

import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import rainward.input.Gap;
import rainward.input.seed.Fill;
import rainward.input.seed.SeedLot;
import rainward.input.seeder.StartingSetting;
import rainward.queue.problem.Plan;
import rainward.queue.problem.PlanItem;

/**
 * What goes on the trucks on one day.
 *
 * @param day of the farm's zone
 * @param machines in the order of their first work
 * @param totals by what is loaded, in the order of the alphabet
 * @param gaps what cannot be said, each once
 */
public record LoadSheet(
        LocalDate day, List<MachineSheet> machines, List<Total> totals, List<Gap> gaps) {

    /** Common practice, no source: one part in twenty more than reckoned. */
    public static final double USUAL_SPARE_FRACTION = 0.05;

    public LoadSheet {
        machines = List.copyOf(machines);
        totals = List.copyOf(totals);
        gaps = List.copyOf(gaps);
    }

    /** The sheet of a day under a plan. */
    public static LoadSheet of(LocalDate day, Plan plan, Supplies supplies) {
        ZoneId zone = supplies.roster().crew().zone();
        Map<String, List<PlanItem>> byMachine = new LinkedHashMap<>();
        plan.items().stream()
                .filter(item -> item.work().from().atZone(zone).toLocalDate().equals(day))
                .sorted(Comparator.comparing(item -> item.work().from()))
                .forEach(item -> byMachine
                        .computeIfAbsent(item.hands().machine(), m -> new ArrayList<>())
                        .add(item));
        MachineLoader loader = new MachineLoader(supplies, plan.items());
        List<MachineSheet> machines =
                byMachine.values().stream().map(loader::sheet).toList();
        return new LoadSheet(
                day,
                machines,
                totals(machines, supplies),
                loader.gaps().stream().distinct().toList());
    }

    private static List<Total> totals(List<MachineSheet> machines, Supplies supplies) {
        Map<String, Double> need = new TreeMap<>();
        Map<String, Double> spare = new TreeMap<>();
        for (MachineSheet machine : machines) {
            for (Line line : machine.lines()) {
                double spareShare = machine.spareShare(line);
                line.amounts().forEach(amount -> {
                    need.merge(amount.what(), amount.massKg(), Double::sum);
                    spare.merge(amount.what(), amount.massKg() * spareShare, Double::sum);
                });
            }
        }
        return need.keySet().stream()
                .map(what -> Total.of(
                        new Amount(what, need.getOrDefault(what, 0.0)),
                        spare.getOrDefault(what, 0.0),
                        supplies.seed()))
                .toList();
    }

    /**
     * One machine's day.
     *
     * @param machine its name
     * @param lines in order of start
     * @param fills of the seed boxes along the way
     */
    public record MachineSheet(String machine, List<Line> lines, List<Fill> fills) {

        public MachineSheet {
            lines = List.copyOf(lines);
            fills = List.copyOf(fills);
        }

        /** Loads of the day. */
        public int loads() {
            return lines.stream().mapToInt(Line::loads).sum();
        }

        /**
         * Share to bring beyond what a line takes: for seed the usual spare, or what stays in the
         * boxes where that is more; lime and fertilizer are loaded to the weight.
         */
        double spareShare(Line line) {
            return line.item()
                    .sowing()
                    .map(sowing -> Math.max(USUAL_SPARE_FRACTION, heelShare(sowing.mix())))
                    .orElse(0.0);
        }

        private double heelShare(String mix) {
            double filledKg = fills.stream()
                    .filter(fill -> fill.mix().equals(mix))
                    .mapToDouble(Fill::addKg)
                    .sum();
            double sownKg = lines.stream()
                    .filter(line -> line.item()
                            .sowing()
                            .filter(sowing -> sowing.mix().equals(mix))
                            .isPresent())
                    .flatMap(line -> line.amounts().stream())
                    .mapToDouble(Amount::massKg)
                    .sum();
            return sownKg > 0 ? filledKg / sownKg - 1 : 0;
        }
    }

    /**
     * One piece of work.
     *
     * @param item of the plan
     * @param areaHa worked in it [ha]
     * @param passes over the ground; empty where nothing goes on it or not known
     * @param setting to start from, on a seeding line
     */
    public record Line(
            PlanItem item, double areaHa, List<Pass> passes, Optional<StartingSetting> setting) {

        public Line {
            passes = List.copyOf(passes);
        }

        /** All that goes on the ground. */
        public List<Amount> amounts() {
            return passes.stream().flatMap(pass -> pass.amounts().stream()).toList();
        }

        /** Loads of the spreader; 0 where it does not spread or its size is not known. */
        public int loads() {
            return passes.stream().mapToInt(Pass::loads).sum();
        }
    }

    /**
     * What goes over the ground at once.
     *
     * @param amounts that go together; not empty
     * @param loads of the spreader; 0 where it does not spread or its size is not known
     */
    public record Pass(List<Amount> amounts, int loads) {

        public Pass {
            amounts = List.copyOf(amounts);
        }
    }

    /**
     * A weight of something.
     *
     * @param what species or product
     * @param massKg of it [kg]
     */
    public record Amount(String what, double massKg) {}

    /**
     * All of one thing.
     *
     * @param what species or product
     * @param needKg that goes on the ground [kg]
     * @param spareKg to bring beside it [kg]
     * @param pull bags of it, where it is seed in the shed
     */
    public record Total(String what, double needKg, double spareKg, Optional<SeedLot.Pull> pull) {

        static Total of(Amount need, double spareKg, Map<String, SeedLot> seed) {
            return new Total(
                    need.what(),
                    need.massKg(),
                    spareKg,
                    Optional.ofNullable(seed.get(need.what()))
                            .map(lot -> lot.pull(need.massKg() + spareKg)));
        }
    }
}
