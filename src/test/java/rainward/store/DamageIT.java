package rainward.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.TreeMap;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rainward.farm.Field;
import rainward.farm.FieldStatus;
import rainward.farm.MappedField;
import rainward.farm.Survey;
import rainward.store.journal.Hollows;
import rainward.store.journal.JournalEntry;
import rainward.store.row.StoreException;

/** A database that a bad disk has changed: what is found, what is said, and the way back. */
class DamageIT {

    private static final int WAYS = 50;
    private static final int FIELDS = 40;
    private static final LocalDate DAY = LocalDate.of(2026, 7, 14);

    @TempDir
    Path folder;

    private Path home;
    private Path copies;
    private byte[] sound = new byte[0];
    private List<Field> known = List.of();

    /** Ways in which a file goes bad. */
    private enum Way {
        BYTES_CHANGED,
        PAGE_WIPED,
        PAGE_OF_ANOTHER_PLACE,
        CUT_SHORT,
        HEAD_LOST
    }

    /** What became of it. */
    private enum End {
        REFUSED_AT_OPENING,
        FOUND_WHEN_READ_OR_COPIED,
        NOT_TO_BE_SEEN
    }

    @BeforeEach
    void season() throws IOException {
        home = folder.resolve("home");
        copies = folder.resolve("copies");
        try (Store store = Store.open(home)) {
            for (int i = 0; i < FIELDS; i++) {
                Field field = Hollows.field("Strip " + i, 1 + i);
                store.inTransaction(books -> {
                    books.fields()
                            .take(
                                    new Survey(
                                            List.of(Hollows.PROPERTY),
                                            List.of(),
                                            List.of(new MappedField(field, Optional.empty()))),
                                    Hollows.JULY);
                    return books.journal()
                            .say(
                                    field.name(),
                                    JournalEntry.Kind.DROPPED,
                                    new JournalEntry.Said(Hollows.JULY, Hollows.JULY, "foreman"));
                });
            }
            known = store.read(books -> books.fields().all());
            Backups.make(store, copies, DAY, 3);
        }
        sound = Files.readAllBytes(database());
    }

    private Path database() {
        return home.resolve("rainward.db");
    }

    @Test
    void everyDamageIsToldInASentenceOrHarmlessAndTheBackupBringsAllBack() throws IOException {
        Map<Way, Map<End, Integer>> counts = new EnumMap<>(Way.class);
        SplittableRandom random = new SplittableRandom(20260714);
        for (int i = 0; i < WAYS; i++) {
            Way way = Way.values()[i % Way.values().length];
            Files.write(database(), damaged(way, random));
            End end = look(i);
            counts.computeIfAbsent(way, w -> new TreeMap<>()).merge(end, 1, Integer::sum);

            Path good = Backups.in(copies).get(Backups.in(copies).size() - 1);
            Backups.restore(home, good, Instant.EPOCH.plusSeconds(i));
            try (Store store = Store.open(home)) {
                assertThat(store.<List<Field>>read(books -> books.fields().all()))
                        .isEqualTo(known);
                assertThat(store.<Map<String, FieldStatus>>read(b -> b.journal().statuses()))
                        .hasSize(FIELDS);
            }
        }
        assertThat(counts.values().stream()
                        .mapToInt(c -> c.getOrDefault(End.NOT_TO_BE_SEEN, 0))
                        .sum())
                .as("damage that SQLite's own check does not see: %s", counts)
                .isLessThan(WAYS / 3);
    }

    /** Opens it as the service would, reads all and tries to copy it. */
    private End look(int number) {
        try (Store store = Store.open(home)) {
            try {
                store.read(books -> books.cases());
                store.read(books -> books.outbox().since(Instant.EPOCH));
                Backups.make(store, copies, DAY.plusDays(1 + number), 400);
                return End.NOT_TO_BE_SEEN;
            } catch (StoreException e) {
                return toldInASentence(e, End.FOUND_WHEN_READ_OR_COPIED);
            }
        } catch (StoreException e) {
            return toldInASentence(e, End.REFUSED_AT_OPENING);
        }
    }

    private static End toldInASentence(StoreException e, End end) {
        assertThat(e.getMessage()).doesNotContain("Exception", "\n\tat ").endsWith(".");
        assertThat(e.isDamage() || String.valueOf(e.getMessage()).contains("damaged"))
                .as(e.getMessage())
                .isTrue();
        return end;
    }

    private byte[] damaged(Way way, SplittableRandom random) {
        byte[] bytes = sound.clone();
        int page = 4096;
        int pages = bytes.length / page;
        int at = (1 + random.nextInt(pages - 1)) * page;
        switch (way) {
            case BYTES_CHANGED -> {
                for (int i = 0; i < 20; i++) {
                    bytes[random.nextInt(bytes.length)] = (byte) random.nextInt(256);
                }
            }
            case PAGE_WIPED -> Arrays.fill(bytes, at, at + page, (byte) 0);
            case PAGE_OF_ANOTHER_PLACE -> {
                int from = (1 + random.nextInt(pages - 1)) * page;
                System.arraycopy(bytes, from, bytes, at, page);
            }
            case CUT_SHORT -> {
                return Arrays.copyOf(bytes, 1 + random.nextInt(bytes.length - 1));
            }
            case HEAD_LOST -> Arrays.fill(bytes, 0, 1 + random.nextInt(page), (byte) 0);
        }
        return bytes;
    }
}
