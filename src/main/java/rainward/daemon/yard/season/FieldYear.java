package rainward.daemon.yard.season;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import rainward.farm.Field;
import rainward.farm.FieldStatus;
import rainward.farm.UnitSystem;
import rainward.input.record.Applied;
import rainward.store.journal.StandBook;

/**
 * What became of one field in one year.
 *
 * @param field as it lies
 * @param status where it stands now
 * @param seedings of the year, the first one first
 * @param applied on it in the year, in order of time
 * @param rainAfter since the last seeding; empty where nothing was seeded
 * @param notes about it, in the order said
 */
public record FieldYear(
        Field field,
        FieldStatus status,
        List<Seeding> seedings,
        List<Work> applied,
        Optional<RainAfter> rainAfter,
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

    /**
     * Rain that somebody measured after a seeding, up to thirty days.
     *
     * @param measuredMm what was measured [mm]
     * @param days of the span, today's the last
     * @param daysMeasured of those, for most of their hours
     */
    public record RainAfter(double measuredMm, int days, int daysMeasured) {

        /** What was measured; empty where nobody did on any day. */
        public Optional<Double> knownMm() {
            return daysMeasured > 0 ? Optional.of(measuredMm) : Optional.empty();
        }

        /** For instance {@code 1.2 in}, or what there is of it and on how many days. */
        public String words(UnitSystem units) {
            if (daysMeasured == 0) {
                return "not known";
            }
            return daysMeasured == days
                    ? units.rain(measuredMm)
                    : units.rain(measuredMm) + " on " + daysMeasured + " of " + days + " days";
        }
    }
}
