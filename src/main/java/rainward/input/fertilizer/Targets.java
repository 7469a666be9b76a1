package rainward.input.fertilizer;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import rainward.farm.Require;
import rainward.input.Gap;
import rainward.input.SoilTest;

/**
 * What a field should be fed this year, and what that does not rest on.
 *
 * @param wanted amounts; a nutrient with a gap is left out, so zero
 * @param gaps what is not known
 */
public record Targets(Nutrients wanted, List<Gap> gaps) {

    public Targets {
        gaps = List.copyOf(gaps);
    }

    /**
     * Recommendations of a region for a kind of crop.
     *
     * @param phosphate by its soil test
     * @param potash by its soil test
     * @param nitrogenKgPerHa for the crop; no soil test tells it [kg/ha]
     */
    public record Rules(
            TestRule.ByExchange phosphate, TestRule.ByExchange potash, double nitrogenKgPerHa) {

        public Rules {
            Require.notNegative("nitrogenKgPerHa", nitrogenKgPerHa);
        }
    }

    /**
     * From a soil test, whose nutrients must be extracted by the methods of the rules.
     *
     * @param removal what this year's crop will take
     */
    public static Targets of(SoilTest test, Rules rules, Nutrients removal) {
        List<Gap> gaps = new ArrayList<>();
        Question phosphorus =
                new Question(test, "phosphorus", test.nutrients().phosphorus(), rules.phosphate());
        Question potassium =
                new Question(test, "potassium", test.nutrients().potassium(), rules.potash());
        return new Targets(
                new Nutrients(
                        rules.nitrogenKgPerHa(),
                        phosphorus.rateKgPerHa(removal.phosphateKgPerHa(), gaps),
                        potassium.rateKgPerHa(removal.potashKgPerHa(), gaps)),
                gaps);
    }

    /** Replaces what harvests took since the last test, where that is all that is known. */
    public static Targets replacing(Nutrients removed, double nitrogenKgPerHa) {
        return new Targets(removed.plus(new Nutrients(nitrogenKgPerHa, 0, 0)), List.of());
    }

    private record Question(
            SoilTest test,
            String nutrient,
            Optional<SoilTest.Extract> found,
            TestRule.ByExchange rule) {

        double rateKgPerHa(double removalKgPerHa, List<Gap> gaps) {
            Optional<Gap> gap = gap();
            if (gap.isPresent()) {
                gaps.add(gap.get());
                return 0;
            }
            return rule.at(test.nutrients().exchangeCmolPerKg().orElse(0))
                    .rateKgPerHa(found.orElseThrow().foundPpm(), removalKgPerHa);
        }

        private Optional<Gap> gap() {
            String wanted = rule.atZero().method();
            if (found.isEmpty()) {
                return missing("no " + nutrient + " on the soil test", "ask the laboratory for it");
            }
            String method = found.get().method();
            if (!method.equalsIgnoreCase(wanted)) {
                return missing(
                        nutrient + " was extracted by " + method + ", the recommendation is for "
                                + wanted,
                        "choose the recommendation for that method, or ask the laboratory");
            }
            return rule.asksExchange() && test.nutrients().exchangeCmolPerKg().isEmpty()
                    ? missing(
                            "no exchange capacity on the soil test, which " + nutrient + " asks",
                            "ask the laboratory for the CEC")
                    : Optional.empty();
        }

        private Optional<Gap> missing(String what, String remedy) {
            return Optional.of(new Gap(test.field(), what, remedy));
        }
    }
}
