package rainward.replay.crew;

import java.util.List;
import rainward.cycle.CycleInput;
import rainward.farm.Crew;
import rainward.farm.Field;
import rainward.farm.GeoPoint;
import rainward.farm.Machine;
import rainward.farm.Property;
import rainward.farm.Roster;

/**
 * A crew and its fields, none of them worked yet.
 *
 * @param roster what names mean
 * @param fields in the order in which they are listed
 * @param rules by which rounds are reckoned
 */
public record Scene(Roster roster, List<Field> fields, CycleInput.Rules rules) {

    public Scene {
        fields = List.copyOf(fields);
    }

    /** Where the machines stand at the start. */
    public GeoPoint yard() {
        return roster.crew().machines().get(0).travel().start();
    }

    /** The same crew and fields around another place: distances stay, to within a few per mille. */
    public Scene laidAround(GeoPoint place) {
        Move move = new Move(yard(), place);
        Crew crew = roster.crew();
        Crew moved =
                crew.with(crew.people(), crew.machines().stream().map(move::of).toList());
        return new Scene(
                Roster.of(
                        roster.properties().values().stream()
                                .map(p -> new Property(p.name(), move.of(p.place())))
                                .toList(),
                        List.copyOf(roster.mixes().values()),
                        List.copyOf(roster.recipes().values()),
                        moved),
                fields.stream().map(move::of).toList(),
                rules);
    }

    /** A shift over ground, east and west by the length of a degree at either latitude. */
    private record Move(GeoPoint from, GeoPoint to) {

        GeoPoint of(GeoPoint place) {
            double stretch = Math.cos(Math.toRadians(from.latitudeDeg()))
                    / Math.cos(Math.toRadians(to.latitudeDeg()));
            return new GeoPoint(
                    to.latitudeDeg() + place.latitudeDeg() - from.latitudeDeg(),
                    to.longitudeDeg() + (place.longitudeDeg() - from.longitudeDeg()) * stretch);
        }

        Field of(Field field) {
            return new Field(
                    field.name(),
                    field.property(),
                    of(field.place()),
                    field.areaHa(),
                    field.ground(),
                    field.wish());
        }

        Machine of(Machine machine) {
            Machine.Travel travel = machine.travel();
            return machine.travelling(
                    new Machine.Travel(travel.speedKmh(), travel.hitch(), of(travel.start())));
        }
    }
}
