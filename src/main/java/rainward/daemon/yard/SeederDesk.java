package rainward.daemon.yard;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import rainward.daemon.office.NameMatch;
import rainward.daemon.office.Office;
import rainward.daemon.office.Refusal;
import rainward.farm.Field;
import rainward.farm.Machine;
import rainward.farm.Mix;
import rainward.farm.Operation;
import rainward.farm.Recipe;
import rainward.farm.SeedingMethod;
import rainward.input.record.BoxLook;
import rainward.input.seed.SeedNeed;
import rainward.input.seed.Sowing;
import rainward.input.seeder.BoxCheck;
import rainward.input.seeder.CatchTest;
import rainward.input.seeder.SeedSize;
import rainward.input.seeder.SettingRecord;
import rainward.input.seeder.StartingSetting;
import rainward.store.Books;
import rainward.store.journal.JournalEntry;

/** Where settings are looked up, proved by a catch and put right at the box. */
public final class SeederDesk {

    private final Office office;
    private final SupplyDesk supplies;

    public SeederDesk(Office office) {
        this.office = office;
        this.supplies = new SupplyDesk(office);
    }

    /**
     * A seeder with a mix in it.
     *
     * @param seeder its name
     * @param mix in the boxes
     * @param rateKgPerHa wanted, out of the bag [kg/ha]
     */
    public record Job(String seeder, Mix mix, double rateKgPerHa) {}

    /** The machine that seeds and is meant by the beginning of its name. */
    public String seederNamed(String text) {
        List<String> seeders = office.settings().work().crew().machines().stream()
                .filter(machine -> machine.operations().contains(Operation.SEED))
                .map(Machine::name)
                .toList();
        return NameMatch.of(text, seeders).orRefuse("seeder");
    }

    /** The mix that is meant by the beginning of its name. */
    public Mix mixNamed(String text) {
        String name = NameMatch.of(
                        text, office.mixes().keySet().stream().sorted().toList())
                .orRefuse("mix");
        return Optional.ofNullable(office.mixes().get(name)).orElseThrow();
    }

    /**
     * The job: the rate that is stated, else that of the mix through the tags in the ledger.
     *
     * @throws Refusal with what to measure, where a tag is missing
     */
    public Job job(Books books, String seeder, String mixText, Optional<Double> statedKgPerHa) {
        Mix mix = mixNamed(mixText);
        double rateKgPerHa = statedKgPerHa.orElseGet(() -> {
            SeedNeed need =
                    SeedNeed.of(new Sowing("the field", 1, mix, method()), supplies.tags(books));
            if (!need.gaps().isEmpty()) {
                throw Refusal.badInput(
                        "The rate of " + mix.name() + " out of the bag is not known: "
                                + need.gaps().get(0).text() + "; or state it with --rate.");
            }
            return need.bulkRateKgPerHa().orElseThrow();
        });
        return new Job(seederNamed(seeder), mix, rateKgPerHa);
    }

    /** How seed is put down by the recipes; rolled where they say nothing. */
    private SeedingMethod method() {
        return office.settings().work().recipes().stream()
                .map(Recipe::seeding)
                .flatMap(stage -> stage.limits().method().stream())
                .findFirst()
                .orElse(SeedingMethod.ROLLED);
    }

    /** The setting to start from; empty where this seeder was never measured. */
    public Optional<StartingSetting> start(Books books, Job job) {
        return StartingSetting.of(
                job.seeder(), SeedSize.of(job.mix()), job.rateKgPerHa(), supplies.settings(books));
    }

    /** Writes down what a catch test gave at a setting. */
    public void weighed(Job job, double settingIndex, CatchTest caught, JournalEntry.Said said) {
        record(job, settingIndex, caught.rateKgPerHa(), said);
    }

    private void record(Job job, double settingIndex, double rate, JournalEntry.Said said) {
        SettingRecord record = new SettingRecord(
                job.seeder(), SeedSize.of(job.mix()), said.at(), settingIndex, rate);
        office.store().inTransaction(books -> {
            boolean there = books.ledger()
                    .same(SettingRecord.class, Optional.empty(), record)
                    .isPresent();
            return there ? 0L : books.ledger().add(record, said);
        });
    }

    /**
     * Writes a look into the boxes down; where it tells the true rate, that is a record of the
     * setting too.
     */
    public void looked(Job job, String field, BoxCheck check, JournalEntry.Said said) {
        office.store().inTransaction(books -> {
            BoxLook look = new BoxLook(job.seeder(), job.mix().name(), check);
            boolean there =
                    books.ledger().same(BoxLook.class, Optional.of(field), look).isPresent();
            return there ? 0L : books.ledger().add(field, look, said);
        });
        switch (check.verdict()) {
            case RIGHT, HEAVY, LIGHT ->
                record(job, check.target().settingIndex(), check.trueRateKgPerHa(), said);
            case TOO_EARLY, NOTHING_COMES -> {}
        }
    }

    /** The field that is meant. */
    public Field field(String text) {
        String name = office.fieldNamed(text);
        return office.store().read(books -> books.fields().named(name)).orElseThrow();
    }

    /** Now, said by somebody. */
    public JournalEntry.Said now(String by) {
        Instant now = office.now();
        return new JournalEntry.Said(now, now, by);
    }
}
