package rainward.input.fertilizer;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
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
    public record Rules(TestRule phosphate, TestRule potash, double nitrogenKgPerHa) {}

    /**
     * From a soil test, whose nutrients must be extracted by the method of the rules.
     *
     * @param removal what this year's crop will take
     */
    public static Targets of(SoilTest test, Rules rules, Nutrients removal) {
        List<Gap> gaps = new ArrayList<>();
        SoilTest.Nutrients found = test.nutrients();
        double phosphate = rate(
                new Question(test, "phosphorus", found.phosphorusPpm()),
                rules.phosphate(),
                removal.phosphateKgPerHa(),
                gaps);
        double potash = rate(
                new Question(test, "potassium", found.potassiumPpm()),
                rules.potash(),
                removal.potashKgPerHa(),
                gaps);
        return new Targets(new Nutrients(rules.nitrogenKgPerHa(), phosphate, potash), gaps);
    }

    /** Replaces what harvests took since the last test, where that is all that is known. */
    public static Targets replacing(Nutrients removed, double nitrogenKgPerHa) {
        return new Targets(removed.plus(new Nutrients(nitrogenKgPerHa, 0, 0)), List.of());
    }

    private record Question(SoilTest test, String nutrient, OptionalDouble foundPpm) {}

    private static double rate(
            Question question, TestRule rule, double removalKgPerHa, List<Gap> gaps) {
        String method = question.test().nutrients().method();
        if (!method.equalsIgnoreCase(rule.method())) {
            gaps.add(new Gap(
                    question.test().field(),
                    question.nutrient() + " was extracted by " + method
                            + ", the recommendation is for " + rule.method(),
                    "choose the recommendation for that method, or ask the laboratory"));
            return 0;
        }
        if (question.foundPpm().isEmpty()) {
            gaps.add(new Gap(
                    question.test().field(),
                    "no " + question.nutrient() + " on the soil test",
                    "ask the laboratory for it"));
            return 0;
        }
        return rule.rateKgPerHa(question.foundPpm().getAsDouble(), removalKgPerHa);
    }
}
