package rainward.readiness;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import rainward.farm.UnitSystem;
import rainward.soil.SoilRun;

/**
 * One line of plain words: what to do, what rain is coming, what the seed lies in, what it risks.
 */
final class ReasonLine {
    private static final double LIKELY = 0.55;
    private static final double POSSIBLE = 0.25;
    private static final double WORTH_A_WORD = 0.05;
    private static final double WORTH_A_SENTENCE = 0.1;
    private static final Duration ANY_HOUR_NOW = Duration.ofHours(3);

    private final Prospect prospect;
    private final Figures.Rain rain;
    private final Figures figures;
    private final Readiness.Parts parts;
    private final ReadinessCase question;
    private final ReadinessCase.Teller teller;

    ReasonLine(ReadinessCase question, Prospect prospect, Figures figures, Readiness.Parts parts) {
        this.question = question;
        this.prospect = prospect;
        this.figures = figures;
        this.rain = figures.rain();
        this.parts = parts;
        teller = question.teller();
    }

    /** What to do and why; {@code wait} where a later hour is clearly better. */
    Readiness.Why words(boolean wait) {
        List<String> said = new ArrayList<>();
        said.add(rainWords());
        said.add(moistureWords());
        said.addAll(riskWords());
        decides().ifPresent(said::add);
        return new Readiness.Why(opening(wait), String.join("; ", said));
    }

    private String opening(boolean wait) {
        if (prospect.bestChance() <= 0) {
            return "No stand to be had in the days ahead";
        }
        if (wait) {
            return String.format(
                    "Better %s (%d%% against %d%%)",
                    teller.when(prospect.timeOf(prospect.bestHour())),
                    percent(prospect.bestChance()),
                    percent(prospect.chance()));
        }
        var time = prospect.timeOf(prospect.nextHour());
        boolean now = !time.isAfter(teller.asOf());
        List<String> open = question.work().openStages();
        if (open.isEmpty()) {
            return "Seed " + (now ? "now" : teller.when(time)) + mixWords();
        }
        // The stage right before the seeding stands for those before it; the gates name them all.
        String last = open.get(open.size() - 1);
        return "Seed " + (now ? "right" : teller.when(time) + ",") + " after " + last + mixWords();
    }

    /** A mix is named where it is not the one that was wanted first. */
    private String mixWords() {
        String wanted = question.item().field().wish().mixes().get(0);
        String mix = prospect.mix().name();
        return mix.equals(wanted) ? "" : ", with " + mix;
    }

    private String rainWords() {
        if (rain.chance() < POSSIBLE || rain.first().isEmpty()) {
            return "little rain in sight (" + percent(rain.chance()) + "% for a useful one)";
        }
        Figures.FirstRain first = rain.first().get();
        boolean soon = first.middle().isBefore(teller.asOf().plus(ANY_HOUR_NOW));
        return teller.units().roughRain(first.amountMm().middle())
                + (rain.chance() >= LIKELY ? " likely " : " possible ")
                + (soon ? "within hours" : teller.when(first.middle()))
                + " ("
                + percent(rain.chance())
                + "%)";
    }

    private String moistureWords() {
        if (parts.moisture() >= 70) {
            return prospect.emergence().known()
                    ? "moist at seed depth, up in about "
                            + Math.round(prospect.emergence().p50Days())
                            + " days"
                    : "moist at seed depth";
        }
        if (parts.moisture() >= 30) {
            return "damp at seed depth, which may start seed but not finish it";
        }
        return dryWords() + ", so nothing starts before rain";
    }

    /** A heel tells the top inch from two, not tenths of an inch. */
    private String dryWords() {
        UnitSystem units = teller.units();
        double inchCm = 2.54;
        double depthCm = dryDepthCm();
        if (depthCm < 1.5 * inchCm) {
            return units == UnitSystem.METRIC ? "top 2 to 3 cm dry" : "top inch dry";
        }
        return units == UnitSystem.METRIC
                ? "dry " + Math.round(depthCm) + " cm down"
                : "dry " + Math.round(depthCm / inchCm) + " inches down";
    }

    private double dryDepthCm() {
        ReadinessCase.Ahead ahead = question.ahead().orElseThrow();
        SoilRun soil = ahead.soil();
        int hour = ahead.traces().hourOf(prospect.timeOf(prospect.nextHour()));
        double sum = 0;
        for (double frontCm : soil.surface().dryFrontCm()[hour]) {
            sum += Math.max(frontCm, soil.seedZone().depthCm());
        }
        return sum / soil.traces();
    }

    /** What would change the answer most; rain is in the line already. */
    private Optional<String> decides() {
        return figures.sensitivities().stream()
                .findFirst()
                .filter(most -> most.gain() >= WORTH_A_SENTENCE)
                .flatMap(most -> switch (most.factor()) {
                    case RAIN -> Optional.empty();
                    case MOISTURE -> Optional.of("a moist seedbed would help most");
                    case HEAT -> Optional.of("milder soil would help most");
                    case SEASON -> Optional.of("the late date costs most");
                });
    }

    private List<String> riskWords() {
        List<String> risks = new ArrayList<>();
        var losses = prospect.losses();
        if (losses.falseStartFraction() >= WORTH_A_WORD) {
            risks.add("false start may take " + percent(losses.falseStartFraction()) + "%");
        }
        if (rain.hardChance() >= WORTH_A_WORD) {
            double slope = question.item().field().ground().slopeFraction();
            risks.add("hard-rain risk "
                    + percent(rain.hardChance())
                    + (slope >= 0.03 ? "% on this slope" : "%"));
        }
        if (losses.heatFraction() >= WORTH_A_WORD) {
            risks.add("heat may take " + percent(losses.heatFraction()) + "%");
        } else if (parts.heat() < 50) {
            risks.add("soil temperature is against it");
        }
        return risks;
    }

    private static int percent(double fraction) {
        return (int) Math.round(100 * fraction);
    }
}
