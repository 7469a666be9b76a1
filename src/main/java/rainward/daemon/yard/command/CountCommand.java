package rainward.daemon.yard.command;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import rainward.daemon.command.OfficeCommand;
import rainward.daemon.office.NameMatch;
import rainward.daemon.office.Office;
import rainward.daemon.office.Refusal;
import rainward.daemon.settings.Written;
import rainward.daemon.word.LookDesk;
import rainward.daemon.yard.CountDesk;
import rainward.daemon.yard.SeederDesk;
import rainward.daemon.yard.Typed;
import rainward.farm.Field;
import rainward.farm.Mix;
import rainward.farm.Quantity;
import rainward.farm.UnitSystem;
import rainward.input.check.NextMix;
import rainward.input.check.PlantCount;
import rainward.input.check.StandVerdict;

/** Turns plants counted into a stand. */
@Command(
        name = "count",
        description = {
            "Turn plants counted at several places of a field into a stand: in a ring thrown on",
            "the ground, or along a stretch of row. Says up, thin or failed, and whether more",
            "places should be counted before the field is torn up.",
            "",
            "With --write the look is kept beside the chance at seeding; a thin or failed field",
            "comes back into the order, and what may still be sown there is told, best first."
        })
public final class CountCommand extends OfficeCommand {

    @Parameters(index = "0", paramLabel = "FIELD", description = "The field.")
    String field = "";

    @Option(names = "--plants", paramLabel = "12,9,14", description = "Of every kind, by place.")
    @Nullable
    String plants;

    @Option(
            names = "--of",
            paramLabel = "SPECIES=12,9,14",
            description = "Of one species, by place, where seedlings are told apart; repeated.")
    Map<String, String> species = Map.of();

    @Option(names = "--ring", description = "Inner width of the ring: 28.3in or 72cm.")
    @Nullable
    String ring;

    @Option(names = "--row", description = "Length of row counted: 36in or 1m, with --spacing.")
    @Nullable
    String row;

    @Option(names = "--spacing", description = "Between rows: 7in or 18cm.")
    @Nullable
    String spacing;

    @Option(names = "--write", description = "Write the look down.")
    boolean write;

    @Option(names = "--cause", description = "Of a thin or failed stand, with --write.")
    @Nullable
    String cause;

    @Option(names = "--by", paramLabel = "NAME", description = "Who looked.")
    String by = "office";

    /** The answer as JSON shows it. */
    record Answer(
            String field,
            String mix,
            double plantsPerM2,
            double standShare,
            double targetShare,
            String verdict,
            boolean countMore,
            List<NextMix> next,
            String words) {}

    @Override
    protected int work(Office office) {
        if (cause != null && !write) {
            throw Refusal.badInput("--cause is kept with the look: give --write too.");
        }
        CountDesk desk = new CountDesk(office);
        Field where = new SeederDesk(office).field(field);
        Mix mix = desk.mixOf(where)
                .orElseThrow(() -> Refusal.badInput(
                        where.name() + ": its mix is not known; add it to the settings."));
        Seen seen = seen(desk, mix, office.settings().farm().units());
        CountDesk.Counted counted = seen.counted();
        List<String> words = new ArrayList<>(List.of(words(where, mix, counted)));
        List<NextMix> next = List.of();
        if (write) {
            words.add(written(office, where, seen));
            next = counted.verdict() == StandVerdict.UP
                    ? List.of()
                    : desk.next(where, mix, counted);
            LocalDate today = LocalDate.ofInstant(office.now(), office.zone());
            next.forEach(one -> words.add("  " + choice(one, today)));
        }
        Answer answer = new Answer(
                where.name(),
                mix.name(),
                seen.plantsPerM2(),
                counted.standShare(),
                counted.targetShare(),
                word(counted.verdict()),
                counted.close(),
                next,
                String.join(System.lineSeparator(), words));
        show(answer, answer::words);
        return 0;
    }

    private static String choice(NextMix next, LocalDate today) {
        String worth = String.format(Locale.ROOT, "%.0f %%", 100 * next.worth());
        if (next.mix().equals(NextMix.KEEP)) {
            return next.mix() + ": worth " + worth;
        }
        boolean toBegin = next.firstSowing().isAfter(today);
        return next.mix() + ": worth " + (toBegin ? "at most " : "") + worth + ", goes in "
                + (toBegin ? "from " + next.firstSowing() + " " : "") + "until "
                + next.lastSowing() + (next.late() ? " (late mix, can wait)" : "");
    }

    private static String word(StandVerdict verdict) {
        return verdict.name().toLowerCase(Locale.ROOT);
    }

    private static String words(Field where, Mix mix, CountDesk.Counted counted) {
        return String.format(
                Locale.ROOT,
                "%s, %s: %.0f %% of the seed stands, %.0f %% of what is wanted: %s.%s",
                where.name(),
                mix.name(),
                100 * counted.standShare(),
                100 * counted.targetShare(),
                word(counted.verdict()),
                counted.close() ? " Count more places before you decide." : "");
    }

    private String written(Office office, Field where, Seen seen) {
        CountDesk.Counted counted = seen.counted();
        boolean up = counted.verdict() == StandVerdict.UP;
        if (!up && cause == null) {
            throw Refusal.badInput("A thin or failed stand needs --cause: dry, washed, crusted,"
                    + " eaten, weeds, seed or other.");
        }
        String share = String.format(Locale.ROOT, "%.4f", Math.min(1, counted.standShare()));
        LookDesk.Said said = new LookDesk.Said(
                where.name(),
                word(counted.verdict()),
                new LookDesk.Seen(
                        Optional.ofNullable(cause),
                        Optional.of(share),
                        Optional.of(seen.places() + " places counted")),
                Optional.empty(),
                by);
        return office.store()
                .inTransaction(books -> new LookDesk(office).take(books, said).words());
    }

    /** What was counted, and what it says. */
    private record Seen(CountDesk.Counted counted, double plantsPerM2, int places) {}

    private Seen seen(CountDesk desk, Mix mix, UnitSystem units) {
        if ((plants == null) == species.isEmpty()) {
            throw Refusal.badInput("Say what was counted: --plants 12,9,14, or --of SPECIES=12,9,14"
                    + " for each species where they are told apart.");
        }
        if (plants != null) {
            PlantCount count = count(units, numbers(plants));
            return new Seen(
                    desk.counted(mix, count),
                    count.plantsPerM2(),
                    count.plants().size());
        }
        List<String> names = mix.components().stream()
                .map(component -> component.species().name())
                .toList();
        Map<String, PlantCount> told = new TreeMap<>();
        species.forEach((name, counted) -> told.put(
                NameMatch.of(name, names).orRefuse("species of " + mix.name()),
                count(units, numbers(counted))));
        List<Integer> places = told.values().stream()
                .map(count -> count.plants().size())
                .distinct()
                .toList();
        if (places.size() > 1) {
            throw Refusal.badInput("--of: give every species a number for every place, 0 where none"
                    + " of it stood.");
        }
        return new Seen(
                desk.counted(mix, told),
                told.values().stream().mapToDouble(PlantCount::plantsPerM2).sum(),
                places.get(0));
    }

    private static List<Integer> numbers(String text) {
        try {
            return Stream.of(text.split(",", -1))
                    .map(String::strip)
                    .map(Integer::valueOf)
                    .toList();
        } catch (NumberFormatException e) {
            throw Refusal.badInput("'" + text + "' is no count of plants by place: write whole"
                    + " numbers with commas, such as 12,9,14.");
        }
    }

    private PlantCount count(UnitSystem units, List<Integer> plants) {
        try {
            if (ring != null && row == null) {
                return PlantCount.inRing(metres("--ring", ring, units), plants);
            }
            if (row != null && spacing != null && ring == null) {
                return PlantCount.alongRow(
                        metres("--row", row, units), metres("--spacing", spacing, units), plants);
            }
        } catch (IllegalArgumentException e) {
            throw Refusal.badInput("--plants: " + e.getMessage() + ".");
        }
        throw Refusal.badInput("Say where it was counted: --ring WIDTH, or --row LENGTH with"
                + " --spacing WIDTH.");
    }

    /** Inches and centimetres, or feet and metres. */
    private static double metres(String what, String text, UnitSystem units) {
        return Written.given(text, Quantity.DEPTH).isPresent()
                ? Typed.positive(what, text, Quantity.DEPTH, units) / 100
                : Typed.positive(what, text, Quantity.WIDTH, units);
    }
}
