package rainward.feed.hourly;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import rainward.farm.Window;
import rainward.feed.reading.Notes;
import rainward.feed.reading.Spell;
import rainward.weather.rain.ChanceRuns;
import rainward.weather.rain.RainAmount;
import rainward.weather.rain.RainChance;
import rainward.weather.rain.RainShares;
import rainward.weather.source.ForecastSeries.RainOutlook;

/**
 * Rain layers as a service gave them, in order of time.
 *
 * @param amountsMm liquid total of each interval [mm]
 * @param chances of measurable rain, by interval [0..1]
 */
public record RainLayers(List<Spell> amountsMm, List<Spell> chances) {

    /** From the present on: an amount under way gives its share of what is left. */
    RainOutlook from(Instant start, Notes notes) {
        List<RainAmount> amounts = new ArrayList<>();
        for (Spell spell : amountsMm) {
            if (spell.value() > 0 && spell.window().length().toHours() > 12) {
                notes.say("rain amount: one total over "
                        + spell.window().length().toHours()
                        + " h, when in it is not known");
            }
            RainAmount whole = new RainAmount(spell.window(), spell.value());
            clipped(spell.window(), start)
                    .ifPresent(w -> amounts.add(new RainAmount(w, RainShares.shareMm(whole, w))));
        }
        List<RainChance> kept = new ArrayList<>();
        for (Spell spell : chances) {
            for (Window block : ChanceRuns.periods(spell.window())) {
                clipped(block, start).ifPresent(w -> kept.add(new RainChance(w, spell.value())));
            }
        }
        sayWhereItEnds(amounts, kept, notes);
        return new RainOutlook(amounts, kept);
    }

    private static void sayWhereItEnds(
            List<RainAmount> amounts, List<RainChance> chances, Notes notes) {
        if (amounts.isEmpty()) {
            notes.say("rain amount: none known");
        }
        if (chances.isEmpty()) {
            notes.say("rain chance: none known");
        }
        if (!amounts.isEmpty() && !chances.isEmpty()) {
            Instant amountsEnd = amounts.get(amounts.size() - 1).window().to();
            Instant chancesEnd = chances.get(chances.size() - 1).window().to();
            if (amountsEnd.isBefore(chancesEnd)) {
                notes.say("rain amount: ends at " + amountsEnd + ", chance at " + chancesEnd);
            }
        }
    }

    private static java.util.Optional<Window> clipped(Window window, Instant start) {
        if (!window.to().isAfter(start)) {
            return java.util.Optional.empty();
        }
        return java.util.Optional.of(
                window.from().isBefore(start) ? new Window(start, window.to()) : window);
    }
}
