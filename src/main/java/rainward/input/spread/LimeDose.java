package rainward.input.spread;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import rainward.input.Gap;
import rainward.input.SoilTest;
import rainward.input.lime.LimeNeed;
import rainward.input.lime.LimeOption;
import rainward.input.lime.LimeOwed;
import rainward.input.lime.LimePlan;
import rainward.input.lime.LimeQuality;
import rainward.input.lime.PhPath;

/**
 * Lime of one field: what goes on this year, what is owed to later ones.
 *
 * @param lime that is spread
 * @param nowKgPerHa this year [kg/ha]; zero where the year has had its most or none is at hand
 * @param lackingKgPerHa that this year could have had besides, were it at hand [kg/ha]
 * @param later doses of later years, of the same lime
 * @param path of the pH, as a range
 * @param options every lime that does the work of this year's dose, the cheapest first
 */
public record LimeDose(
        LimeQuality lime,
        double nowKgPerHa,
        double lackingKgPerHa,
        LimePlan later,
        PhPath path,
        List<LimeOption> options) {

    private static final double NOTHING_KG_PER_HA = 1;

    public LimeDose {
        options = List.copyOf(options);
    }

    /** Owed after this year's dose, as pure, fine calcium carbonate [kg/ha]. */
    public LimeOwed owed() {
        double laterKgPerHa =
                later.doses().stream().mapToDouble(LimePlan.Dose::rateKgPerHa).sum();
        return new LimeOwed(later.field(), laterKgPerHa * later.effectiveFraction());
    }

    /** The dose of a case, or why there is none. */
    static Optional<LimeDose> of(SpreadCase asked, SpreadRules.Liming rules, List<Gap> gaps) {
        if (asked.test().isEmpty()) {
            return Optional.empty();
        }
        SoilTest test = asked.test().get();
        Optional<Gap> lacking = rules.rule().gap(test);
        if (lacking.isPresent()) {
            gaps.add(lacking.get());
            return Optional.empty();
        }
        if (rules.limes().isEmpty()) {
            gaps.add(new Gap(
                    "lime",
                    "no lime is described",
                    "enter CCE, fineness and price of the lime at hand in the settings"));
            return Optional.empty();
        }
        LimeQuality lime = rules.limes().get(0);
        Optional<Double> effective =
                lime.effectiveFraction(rules.fineness()).filter(share -> share > 0);
        if (effective.isEmpty()) {
            gaps.add(new Gap(
                    lime.name(),
                    "its sieve report lacks a sieve of the system "
                            + rules.fineness().name(),
                    "ask the quarry for its sieve report"));
            return Optional.empty();
        }
        return new Reckoning(asked, rules, lime, effective.get()).dose(test);
    }

    /** The steps from need to dose. */
    private record Reckoning(
            SpreadCase asked,
            SpreadRules.Liming rules,
            LimeQuality lime,
            double effectiveFraction) {

        Optional<LimeDose> dose(SoilTest test) {
            double startPh = test.acidity().ph();
            double targetPh = Math.max(startPh, asked.plot().targetPh());
            LimeNeed need = rules.rule().need(test, targetPh).orElseThrow();
            double fullKgPerHa =
                    need.effectiveKgPerHa() * rules.depthCm() / need.standard().depthCm();
            double owedKgPerHa = Math.max(0, fullKgPerHa - broughtKgPerHa());
            if (owedKgPerHa < NOTHING_KG_PER_HA) {
                return Optional.empty();
            }
            double roomKgPerHa = Math.max(0, rules.cap().mostKgPerHa() - thisYearKgPerHa());
            double wantedKgPerHa =
                    orNothing(Math.min(owedKgPerHa / effectiveFraction, roomKgPerHa));
            double nowKgPerHa = orNothing(
                    Math.min(wantedKgPerHa, rules.atHandKg() / asked.plot().areaHa()));
            double afterKgPerHa = owedKgPerHa - nowKgPerHa * effectiveFraction;
            LimePlan later = LimePlan.of(
                    new LimeOwed(asked.plot().field(), Math.max(0, afterKgPerHa)),
                    effectiveFraction,
                    rules.cap(),
                    asked.today().getYear() + rules.cap().yearsBetween());
            double doneShare =
                    Math.min(1, 1 - Math.max(0, afterKgPerHa) / Math.max(fullKgPerHa, 1e-9));
            return Optional.of(new LimeDose(
                    lime,
                    nowKgPerHa,
                    orNothing(wantedKgPerHa - nowKgPerHa),
                    later,
                    new PhPath(startPh, targetPh, doneShare),
                    LimeOption.byCost(
                            rules.limes(), rules.fineness(), nowKgPerHa * effectiveFraction)));
        }

        private static double orNothing(double rateKgPerHa) {
            return rateKgPerHa < NOTHING_KG_PER_HA ? 0 : rateKgPerHa;
        }

        /** Pure, fine calcium carbonate brought since the soil was sampled [kg/ha]. */
        private double broughtKgPerHa() {
            return asked.sinceTest().stream()
                    .mapToDouble(s -> rules.named(s.product())
                            .flatMap(l -> l.effectiveFraction(rules.fineness()))
                            .map(share -> share * s.rateKgPerHa())
                            .orElse(0.0))
                    .sum();
        }

        /** Lime of any kind that the field has had within the years between two doses [kg/ha]. */
        private double thisYearKgPerHa() {
            LocalDate from = asked.today().minusYears(rules.cap().yearsBetween());
            return asked.past().spread().stream()
                    .filter(s -> s.on().isAfter(from))
                    .filter(s -> rules.named(s.product()).isPresent())
                    .mapToDouble(SpreadCase.Spreading::rateKgPerHa)
                    .sum();
        }
    }
}
