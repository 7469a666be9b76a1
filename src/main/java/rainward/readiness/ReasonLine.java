package rainward.readiness;

import java.util.ArrayList;
import java.util.List;
import rainward.farm.UnitSystem;
import rainward.soil.SoilRun;

/**
 * One line of plain words: what to do, what rain is coming, what the seed lies in, what it risks.
 */
final class ReasonLine {
    private static final double LIKELY = 0.55;
    private static final double POSSIBLE = 0.25;
    private static final double WORTH_A_WORD = 0.05;

    private final Prospect prospect;
    private final RainAhead rain;
    private final Readiness.Parts parts;
    private final ReadinessCase question;
    private final WhenWords when;

    ReasonLine(ReadinessCase question, Prospect prospect, RainAhead rain, Readiness.Parts parts) {
        this.question = question;
        this.prospect = prospect;
        this.rain = rain;
        this.parts = parts;
        when = new WhenWords(question.teller());
    }

    /** The line; {@code wait} where a later hour is clearly better. */
    String words(boolean wait) {
        List<String> said = new ArrayList<>();
        said.add(rainWords());
        said.add(moistureWords());
        said.addAll(riskWords());
        return opening(wait) + String.join("; ", said) + ".";
    }

    private String opening(boolean wait) {
        if (prospect.bestChance() <= 0) {
            return "No stand to be had in the days ahead: ";
        }
        if (!wait) {
            return "Seed " + soon() + ": ";
        }
        return String.format(
                "Better %s (%d %% against %d %%): ",
                when.of(prospect.timeOf(prospect.bestHour())),
                percent(prospect.bestChance()),
                percent(prospect.chance()));
    }

    private String soon() {
        var time = prospect.timeOf(prospect.nextHour());
        return time.isAfter(question.teller().asOf()) ? when.of(time) : "now";
    }

    private String rainWords() {
        UnitSystem units = question.teller().units();
        if (rain.chance() < POSSIBLE) {
            return "little rain in sight (" + percent(rain.chance()) + " % for a useful one)";
        }
        var arrival = question.ahead().orElseThrow().traces().timeOf(rain.arrivalHour());
        return units.roughRain(rain.amountMm())
                + (rain.chance() >= LIKELY ? " likely " : " possible ")
                + when.of(arrival)
                + " ("
                + percent(rain.chance())
                + " %)";
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
        String dry = "dry down to " + question.teller().units().depth(dryDepthCm());
        return dry + ", so nothing starts before rain";
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

    private List<String> riskWords() {
        List<String> risks = new ArrayList<>();
        var losses = prospect.losses();
        if (losses.falseStartFraction() >= WORTH_A_WORD) {
            risks.add("false start may take " + percent(losses.falseStartFraction()) + " %");
        }
        if (rain.hardChance() >= WORTH_A_WORD) {
            double slope = question.item().field().ground().slopeFraction();
            risks.add("hard-rain risk "
                    + percent(rain.hardChance())
                    + (slope >= 0.03 ? " % on this slope" : " %"));
        }
        if (losses.heatFraction() >= WORTH_A_WORD) {
            risks.add("heat may take " + percent(losses.heatFraction()) + " %");
        } else if (parts.heat() < 50) {
            risks.add("soil temperature is against it");
        }
        return risks;
    }

    private static int percent(double fraction) {
        return (int) Math.round(100 * fraction);
    }
}
