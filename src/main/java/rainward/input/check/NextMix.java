package rainward.input.check;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import rainward.farm.Require;

/**
 * What may still be sown on a thin or failed field.
 *
 * @param mix its name; {@link #KEEP} for leaving what stands
 * @param worth expected, 0 to 1; of a mix whose season is still to begin, at most
 * @param firstSowing first day that it may go in
 * @param lastSowing last day that it may go in
 * @param late true for the small-grain mix that is left when all else is over
 */
public record NextMix(
        String mix, double worth, LocalDate firstSowing, LocalDate lastSowing, boolean late) {
    public static final String KEEP = "keep what stands";

    public NextMix {
        Require.named("mix", mix);
        Require.inRange("worth", worth, 0, 1);
    }

    /** Leaving what stands, worth its share of the target. */
    public static NextMix keep(double targetShare, double fullWorth) {
        Require.notNegative("targetShare", targetShare);
        Require.inRange("fullWorth", fullWorth, 0, 1);
        return new NextMix(
                KEEP, Math.min(1, targetShare) * fullWorth, LocalDate.MIN, LocalDate.MAX, false);
    }

    /**
     * What is still in season and worth anything, best first, the late mix last whatever it is
     * worth: it can wait, the others cannot.
     */
    public static List<NextMix> ranked(List<NextMix> all, LocalDate today) {
        return all.stream()
                .filter(next -> next.worth() > 0 && !today.isAfter(next.lastSowing()))
                .sorted(Comparator.comparing(NextMix::late)
                        .thenComparing(
                                Comparator.comparingDouble(NextMix::worth).reversed())
                        .thenComparing(NextMix::mix))
                .toList();
    }
}
