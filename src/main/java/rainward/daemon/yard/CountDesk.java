package rainward.daemon.yard;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.ToDoubleFunction;
import rainward.cycle.Outlook;
import rainward.daemon.office.Office;
import rainward.daemon.office.PlanningDesk;
import rainward.farm.Field;
import rainward.farm.FieldCase;
import rainward.farm.FieldStatus;
import rainward.farm.Mix;
import rainward.input.check.NextMix;
import rainward.input.check.PlantCount;
import rainward.input.check.SownSeed;
import rainward.input.check.StandVerdict;
import rainward.stand.StandOutlook;

/** Where plants counted become a stand, and a thin one what may still be sown. */
public final class CountDesk {

    private final Office office;

    public CountDesk(Office office) {
        this.office = office;
    }

    /**
     * What a count says.
     *
     * @param standShare plants against the live seed of the drilled rate, 0 and more
     * @param targetShare that against the target of the mix
     * @param verdict that it proposes
     * @param close true where more places should be counted first
     */
    public record Counted(
            double standShare, double targetShare, StandVerdict verdict, boolean close) {}

    /** A count held against its mix. */
    public Counted counted(Mix mix, PlantCount count) {
        return counted(
                mix,
                SownSeed.standOfAll(mix, count.plantsPerM2()),
                SownSeed.standOfAll(mix, count.errorPerM2()),
                count.plants().size());
    }

    /**
     * A count in which seedlings were told apart, by species. Its error is taken as if every
     * species were off the same way: rather one place too many than a field torn up on a guess.
     */
    public Counted counted(Mix mix, Map<String, PlantCount> bySpecies) {
        return counted(
                mix,
                SownSeed.stand(mix, each(bySpecies, PlantCount::plantsPerM2)),
                SownSeed.stand(mix, each(bySpecies, PlantCount::errorPerM2)),
                bySpecies.values().stream()
                        .mapToInt(count -> count.plants().size())
                        .min()
                        .orElse(0));
    }

    private static Map<String, Double> each(
            Map<String, PlantCount> bySpecies, ToDoubleFunction<PlantCount> figure) {
        Map<String, Double> figures = new TreeMap<>();
        bySpecies.forEach((species, count) -> figures.put(species, figure.applyAsDouble(count)));
        return figures;
    }

    private static Counted counted(Mix mix, double stand, double standError, int places) {
        double share = StandVerdict.targetShare(mix, stand);
        double error = StandVerdict.targetShare(mix, standError);
        boolean few = places < PlantCount.FEWEST_PLACES;
        return new Counted(
                stand, share, StandVerdict.of(share), few || StandVerdict.isClose(share, error));
    }

    /**
     * What may still be sown on a field, best first, the late mix last; by what the forecast in
     * hand makes of it, and by its season where that is still to begin. Of a thin stand, leaving it
     * is one of the choices.
     *
     * @param stands mix that was counted
     */
    public List<NextMix> next(Field field, Mix stands, Counted counted) {
        Outlook outlook = new PlanningDesk(office).standing();
        LocalDate today = LocalDate.ofInstant(office.now(), office.zone());
        List<Mix> wished = office.roster().mixesOf(field);
        List<NextMix> choices = new ArrayList<>(outlook.field(field.name()).stream()
                .flatMap(one -> one.stands().stream())
                .flatMap(stand -> wished.stream()
                        .filter(mix -> mix.name().equals(stand.mix()))
                        .map(mix -> next(mix, worth(mix, stand, today), wished, today)))
                .toList());
        if (counted.verdict() == StandVerdict.THIN) {
            choices.add(NextMix.keep(counted.targetShare(), stands.season().worthOn(today)));
        }
        return NextMix.ranked(choices, today);
    }

    private static double worth(Mix mix, StandOutlook stand, LocalDate today) {
        boolean toBegin = mix.season().firstSowing().atYear(today.getYear()).isAfter(today);
        double expected = Arrays.stream(stand.worth()).max().orElse(0);
        return Math.min(1, toBegin ? Math.max(expected, mix.season().fullWorth()) : expected);
    }

    private static NextMix next(Mix mix, double worth, List<Mix> wished, LocalDate today) {
        boolean late = wished.stream()
                .allMatch(other -> other.equals(mix)
                        || other.season().lastSowing().compareTo(mix.season().lastSowing()) < 0);
        return new NextMix(
                mix.name(),
                worth,
                mix.season().firstSowing().atYear(today.getYear()),
                mix.season().lastSowing().atYear(today.getYear()),
                late && wished.size() > 1);
    }

    /** The mix that is in the ground of a field, else the one wanted there. */
    public Optional<Mix> mixOf(Field field) {
        FieldStatus status = office.store().read(books -> books.journal().statusOf(field.name()));
        return Optional.ofNullable(office.mixes().get(new FieldCase(field, status).mix()));
    }
}
