package rainward.daemon.yard.spread;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import rainward.farm.Quantity;
import rainward.farm.UnitSystem;
import rainward.input.Gap;
import rainward.input.fertilizer.Nutrients;
import rainward.input.lime.LimeOption;
import rainward.input.lime.LimePlan;
import rainward.input.spread.FieldSpread;
import rainward.input.spread.LimeDose;

/**
 * Lime and fertilizer of one field, in the units of the person.
 *
 * @param field its name
 * @param area of it
 * @param areaUnit its unit
 * @param rateUnit of every rate
 * @param massUnit of every mass
 * @param lime this year's dose and what is owed, if any
 * @param products of the blend
 * @param usd what this year costs
 * @param words for the person
 * @param gaps what is not known
 */
public record SpreadFigures(
        String field,
        double area,
        String areaUnit,
        String rateUnit,
        String massUnit,
        Optional<LimeFigures> lime,
        List<ProductFigures> products,
        double usd,
        List<String> words,
        List<Gap> gaps) {

    /**
     * Lime of one field.
     *
     * @param lime that is spread
     * @param nowRate this year
     * @param nowMass this year, over the field
     * @param lackingMass that this year could have had besides, were it in the shed
     * @param later rates of later years
     * @param phNow as tested
     * @param phTarget that the mix asks for
     * @param phLow low end after a year
     * @param phHigh high end after a year
     * @param targetThisYear true only where even that can be hoped for
     */
    public record LimeFigures(
            String lime,
            double nowRate,
            double nowMass,
            double lackingMass,
            List<YearRate> later,
            double phNow,
            double phTarget,
            double phLow,
            double phHigh,
            boolean targetThisYear) {}

    /** A dose of a later year. */
    public record YearRate(int year, double rate) {}

    /** A product on the field. */
    public record ProductFigures(String product, double rate, double mass) {}

    /** The figures of a field. */
    public static SpreadFigures of(FieldSpread spread, UnitSystem units) {
        Turn turn = new Turn(spread, units);
        double limeUsd = spread.lime()
                .map(dose -> dose.nowKgPerHa() * dose.lime().usdPerKg())
                .orElse(0.0);
        double areaHa = spread.asked().plot().areaHa();
        return new SpreadFigures(
                spread.asked().plot().field(),
                round(units.shown(Quantity.AREA, areaHa), 100),
                units.symbol(Quantity.AREA),
                units.symbol(Quantity.RATE),
                units.symbol(Quantity.MASS),
                spread.lime().map(turn::lime),
                spread.blend().parts().stream()
                        .map(part -> new ProductFigures(
                                part.product().name(),
                                turn.rate(part.rateKgPerHa()),
                                turn.mass(part.rateKgPerHa())))
                        .toList(),
                round((limeUsd + spread.blend().usdPerHa()) * areaHa, 100),
                turn.words(),
                spread.gaps());
    }

    private static double round(double value, double parts) {
        return Math.round(value * parts) / parts;
    }

    private record Turn(FieldSpread spread, UnitSystem units) {

        double rate(double rateKgPerHa) {
            return round(units.shown(Quantity.RATE, rateKgPerHa), 10);
        }

        double mass(double rateKgPerHa) {
            return round(
                    units.shown(
                            Quantity.MASS, rateKgPerHa * spread.asked().plot().areaHa()),
                    10);
        }

        LimeFigures lime(LimeDose dose) {
            return new LimeFigures(
                    dose.lime().name(),
                    rate(dose.nowKgPerHa()),
                    mass(dose.nowKgPerHa()),
                    mass(dose.lackingKgPerHa()),
                    dose.later().doses().stream()
                            .map(later -> new YearRate(later.year(), rate(later.rateKgPerHa())))
                            .toList(),
                    dose.path().startPh(),
                    dose.path().targetPh(),
                    round(dose.path().after(1).lowPh(), 10),
                    round(dose.path().after(1).highPh(), 10),
                    dose.path().mayReachTargetThisYear());
        }

        List<String> words() {
            List<String> words = new ArrayList<>();
            spread.lime().ifPresent(dose -> limeWords(dose, words));
            if (spread.lime().isEmpty() && spread.asked().test().isPresent()) {
                words.add("lime: none");
            }
            words.add("fertilizer: " + blend());
            return words;
        }

        private void limeWords(LimeDose dose, List<String> words) {
            words.add("lime: "
                    + (dose.nowKgPerHa() > 0
                            ? dose.lime().name() + " " + amount(dose.nowKgPerHa()) + " this year"
                            : none(dose))
                    + lacking(dose)
                    + later(dose.later()));
            words.add(dose.path().words());
            if (dose.options().size() > 1 && dose.nowKgPerHa() > 0) {
                words.add("for the same work: "
                        + dose.options().stream()
                                .map(this::option)
                                .collect(Collectors.joining("; ")));
            }
        }

        private String lacking(LimeDose dose) {
            return dose.lackingKgPerHa() > 0
                    ? ", the shed lacks " + amount(dose.lackingKgPerHa())
                    : "";
        }

        private static String none(LimeDose dose) {
            return dose.lackingKgPerHa() > 0
                    ? "none this year"
                    : "none this year, it has had its most";
        }

        private String option(LimeOption option) {
            return option.lime().name() + " " + units.text(Quantity.RATE, option.rateKgPerHa(), 0)
                    + String.format(
                            Locale.ROOT,
                            ", $%.0f a%s",
                            option.usdPerHa() * units.inside(Quantity.AREA, 1),
                            units == UnitSystem.METRIC ? " hectare" : "n acre");
        }

        private String amount(double rateKgPerHa) {
            double massKg = rateKgPerHa * spread.asked().plot().areaHa();
            return units.text(Quantity.RATE, rateKgPerHa, 0) + " (" + units.mass(massKg) + ")";
        }

        private String later(LimePlan plan) {
            return plan.doses().isEmpty()
                    ? ""
                    : ", owed: "
                            + plan.doses().stream()
                                    .map(dose -> dose.year() + " "
                                            + units.text(Quantity.RATE, dose.rateKgPerHa(), 0))
                                    .collect(Collectors.joining(", "));
        }

        private String blend() {
            Nutrients target = spread.target();
            String wanted = String.format(
                    Locale.ROOT,
                    " for N-P2O5-K2O %.0f-%.0f-%.0f %s",
                    units.shown(Quantity.RATE, target.nitrogenKgPerHa()),
                    units.shown(Quantity.RATE, target.phosphateKgPerHa()),
                    units.shown(Quantity.RATE, target.potashKgPerHa()),
                    units.symbol(Quantity.RATE));
            return spread.blend().parts().isEmpty()
                    ? "none" + wanted
                    : spread.blend().parts().stream()
                                    .map(part -> part.product().name() + " "
                                            + amount(part.rateKgPerHa()))
                                    .collect(Collectors.joining(", "))
                            + wanted;
        }
    }
}
