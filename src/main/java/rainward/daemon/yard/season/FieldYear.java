package rainward.daemon.yard.season;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import rainward.farm.Field;
import rainward.farm.FieldStatus;
import rainward.input.record.Applied;
import rainward.store.journal.StandBook;

/**
 * What became of one field in one year.
 *
 * @param field as it lies
 * @param status where it stands now
 * @param seedings of the year, the first one first
 * @param applied on it in the year, in order of time
 * @param rainAfterMm since the last seeding, up to thirty days [mm]
 * @param notes about it, in the order said
 */
public record FieldYear(
        Field field,
        FieldStatus status,
        List<Seeding> seedings,
        List<Work> applied,
        Optional<Double> rainAfterMm,
        List<String> notes) {

    public FieldYear {
        seedings = List.copyOf(seedings);
        applied = List.copyOf(applied);
        notes = List.copyOf(notes);
    }

    /** The seeding that counts now. */
    public Optional<Seeding> last() {
        return seedings.isEmpty()
                ? Optional.empty()
                : Optional.of(seedings.get(seedings.size() - 1));
    }

    /**
     * Seed that went in, and what was found of it.
     *
     * @param at when
     * @param day of the farm's zone
     * @param mix that went in
     * @param by who said so
     * @param looks at it, the last one counts
     */
    public record Seeding(
            Instant at, LocalDate day, String mix, String by, List<StandBook.StandCheck> looks) {
        public Seeding {
            looks = List.copyOf(looks);
        }

        public Optional<StandBook.StandCheck> look() {
            return looks.isEmpty() ? Optional.empty() : Optional.of(looks.get(looks.size() - 1));
        }
    }

    /**
     * What was put on or in.
     *
     * @param day of the farm's zone
     * @param what was worked and used
     * @param by who said so
     */
    public record Work(LocalDate day, Applied what, String by) {}
}
