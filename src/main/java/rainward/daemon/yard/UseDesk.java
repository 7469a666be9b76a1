package rainward.daemon.yard;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import rainward.daemon.office.Office;
import rainward.daemon.office.Refusal;
import rainward.farm.Field;
import rainward.farm.Mix;
import rainward.farm.Operation;
import rainward.farm.Quantity;
import rainward.farm.SeedingMethod;
import rainward.farm.UnitSystem;
import rainward.input.record.Applied;
import rainward.input.seed.SeedNeed;
import rainward.input.seed.Sowing;
import rainward.store.Books;
import rainward.store.journal.JournalEntry;

/** Where the ground really worked and the inputs really used are written beside the stage. */
public final class UseDesk {

    private static final double MOST_OF_FIELD = 1.1;

    private final Office office;

    public UseDesk(Office office) {
        this.office = office;
    }

    /**
     * What was worked and used, as typed.
     *
     * @param area worked; else the whole field
     * @param used what and how much, {@code turnip=12lb}
     * @param asReckoned true: what the load sheet reckons for that ground was used
     */
    public record Said(Optional<String> area, List<String> used, boolean asReckoned) {
        public static final Said NOTHING = new Said(Optional.empty(), List.of(), false);

        public Said {
            used = List.copyOf(used);
        }

        public boolean isNothing() {
            return area.isEmpty() && used.isEmpty() && !asReckoned;
        }
    }

    /**
     * Writes it beside the line of the journal that says the stage is done; told twice, it stands
     * there once.
     *
     * @return what to tell the person beside the word on the stage
     */
    public String take(Books books, JournalEntry done, Said said) {
        if (said.isNothing()) {
            return "";
        }
        Field field = books.fields().named(done.field()).orElseThrow();
        UnitSystem units = office.settings().farm().units();
        double areaHa = said.area()
                .map(text -> Typed.positive("--acres", text, Quantity.AREA, units))
                .orElse(field.areaHa());
        if (areaHa > field.areaHa() * MOST_OF_FIELD) {
            throw Refusal.badInput(field.name() + " is " + units.area(field.areaHa()) + ", so "
                    + units.area(areaHa) + " of it cannot have been worked.");
        }
        Applied applied = new Applied(
                done.detail().stage().orElseThrow(),
                areaHa,
                used(books, done, said, areaHa),
                done.detail().machine());
        if (books.ledger().ofJournal(done.id(), Applied.class).contains(applied)) {
            return " What was used stands there already.";
        }
        if (!books.ledger().ofJournal(done.id(), Applied.class).isEmpty()) {
            return " What was used is written already; undo the stage to write other figures.";
        }
        books.ledger().addWith(done.id(), field.name(), applied, done.said());
        return " " + units.area(areaHa) + words(applied, units) + ".";
    }

    private static String words(Applied applied, UnitSystem units) {
        return applied.used().isEmpty()
                ? ""
                : " with "
                        + String.join(
                                ", ",
                                applied.used().stream()
                                        .map(u -> units.mass(u.massKg()) + " " + u.item())
                                        .toList());
    }

    private List<Applied.Used> used(Books books, JournalEntry done, Said said, double areaHa) {
        List<Applied.Used> used = new ArrayList<>();
        Items items = new Items(office);
        for (String text : said.used()) {
            Map.Entry<String, String> pair = Typed.pair("--used", text);
            String item = items.named(books, pair.getKey());
            used.add(new Applied.Used(item, items.massKg(item, pair.getValue())));
        }
        if (said.asReckoned()) {
            used.addAll(reckoned(books, done, areaHa));
        }
        return used;
    }

    /** What the load sheet reckons for this ground; a gap is refused, not guessed. */
    private List<Applied.Used> reckoned(Books books, JournalEntry done, double areaHa) {
        Operation operation = done.detail().operation().orElse(Operation.TILL);
        return switch (operation) {
            case SEED -> seed(books, done, areaHa);
            case SPREAD ->
                new SupplyDesk(office)
                                .given(books, LocalDate.ofInstant(done.said().at(), office.zone()))
                                .supplies()
                                .spreads()
                                .getOrDefault(done.field(), List.of())
                                .stream()
                                .map(s -> new Applied.Used(s.product(), s.rateKgPerHa() * areaHa))
                                .toList();
            case MOW, SPRAY, DISK, TILL, FIRM -> List.of();
        };
    }

    private List<Applied.Used> seed(Books books, JournalEntry done, double areaHa) {
        Mix mix = done.detail()
                .mix()
                .flatMap(name -> Optional.ofNullable(office.mixes().get(name)))
                .orElseThrow(() -> Refusal.badInput(done.field()
                        + ": which mix went in is not known; write --mix beside --as-reckoned."));
        SeedingMethod method = books.fields().all().stream()
                .filter(field -> field.name().equals(done.field()))
                .findFirst()
                .flatMap(office.roster()::recipeOf)
                .flatMap(recipe -> recipe.seeding().limits().method())
                .orElse(SeedingMethod.ROLLED);
        SeedNeed need = SeedNeed.of(
                new Sowing(done.field(), areaHa, mix, method), new SupplyDesk(office).tags(books));
        if (!need.gaps().isEmpty()) {
            throw Refusal.badInput("What was sown on " + done.field() + " cannot be reckoned: "
                    + need.gaps().get(0).text() + "; or weigh it and write --used.");
        }
        return need.parts().stream()
                .map(part -> new Applied.Used(part.species(), part.bulkKg().orElseThrow()))
                .toList();
    }
}
