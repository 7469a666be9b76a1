package rainward.brief;

import java.util.List;
import java.util.Optional;
import rainward.farm.Operation;
import rainward.farm.Window;

/**
 * Who does what, in which order.
 *
 * @param today fields with work on the day of the brief, in order
 * @param later fields of the days after, in order
 * @param leftOut waiting fields that are not in the order, with why
 */
public record Orders(List<FieldLine> today, List<FieldLine> later, List<LeftOut> leftOut) {

    public Orders {
        today = List.copyOf(today);
        later = List.copyOf(later);
        leftOut = List.copyOf(leftOut);
    }

    /**
     * A field of the order.
     *
     * @param rank place in the order, from 1
     * @param place which field
     * @param stages still to do, in order of time
     * @param sown what goes in and what is hoped for, where seeding is in the order
     * @param reason one line of plain words
     */
    public record FieldLine(
            int rank, Place place, List<StageLine> stages, Optional<Sown> sown, String reason) {

        public FieldLine {
            stages = List.copyOf(stages);
        }
    }

    /**
     * Which field.
     *
     * @param field its name
     * @param property it belongs to
     * @param areaHa to be seeded [ha]
     */
    public record Place(String field, String property, double areaHa) {}

    /**
     * One stage, given to a machine and a person.
     *
     * @param stage what the crew calls it
     * @param operation what the machine does
     * @param hands machine and person
     * @param work from start to finish
     * @param drivingHours to get there [h]
     * @param settingHours to set the seeder for another mix before it [h]
     * @param shareFraction share of the field worked in this stretch, 1 where in one go
     */
    public record StageLine(
            String stage,
            Operation operation,
            Hands hands,
            Window work,
            double drivingHours,
            double settingHours,
            double shareFraction) {}

    /** Who, with what. */
    public record Hands(String machine, String person) {}

    /**
     * What goes in.
     *
     * @param mix its name
     * @param chance of a stand when seeded as planned, 0 to 1
     * @param fallBack true where it is not the mix that was wanted first
     */
    public record Sown(String mix, double chance, boolean fallBack) {}

    /** A waiting field that is not in the order. */
    public record LeftOut(Place place, String why) {}
}
