package rainward.intake;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.DoubleStream;
import rainward.farm.Field;
import rainward.farm.GeoPoint;
import rainward.farm.MappedField;
import rainward.farm.Property;
import rainward.farm.Survey;

/** Puts the fields of one file together and looks at them side by side. */
final class SurveyBuilder {

    /** Farther than that from the others of its property, a field is likely misplaced [km]. */
    private static final double FAR_KM = 50;

    private final Faults faults;
    private final List<MappedField> fields = new ArrayList<>();
    private final Map<String, String> placeByName = new HashMap<>();
    private final Map<String, GeoPoint> gates = new LinkedHashMap<>();

    SurveyBuilder(Faults faults) {
        this.faults = faults;
    }

    /** Names are what everything else refers to, so that none may come twice. */
    void name(String name, String place) {
        String before = placeByName.putIfAbsent(name, place);
        if (before != null) {
            faults.add(
                    place,
                    "name \"" + name + "\" stands at " + before + " already",
                    "each field needs a name of its own");
        }
    }

    void add(MappedField field) {
        fields.add(field);
    }

    void gate(String property, GeoPoint gate, String place) {
        GeoPoint before = gates.putIfAbsent(property, gate);
        if (before != null && !before.equals(gate)) {
            faults.add(
                    place,
                    "property \"" + property + "\" has another gate before",
                    "give one gate for each property");
        }
    }

    Intake<Survey> outcome() {
        if (fields.isEmpty() && gates.isEmpty() && faults.count() == 0) {
            faults.add("", "holds no field", "name a file with at least one");
        }
        warnOfFarOnes();
        return faults.outcome(this::survey);
    }

    private void warnOfFarOnes() {
        Map<String, GeoPoint> middles = middles();
        for (MappedField mapped : fields) {
            Field field = mapped.field();
            GeoPoint middle = gates.getOrDefault(
                    field.property(), middles.getOrDefault(field.property(), field.place()));
            if (field.place().distanceKm(middle) > FAR_KM) {
                faults.warn(
                        Optional.ofNullable(placeByName.get(field.name())).orElse(""),
                        "\"" + field.name() + "\" lies "
                                + Math.round(field.place().distanceKm(middle))
                                + " km from its property \"" + field.property() + "\"",
                        "check its latitude and longitude");
            }
        }
    }

    private Survey survey() {
        List<Property> stated = new ArrayList<>();
        gates.forEach((name, gate) -> stated.add(new Property(name, gate)));
        List<Property> derived = new ArrayList<>();
        middles().forEach((name, middle) -> {
            if (!gates.containsKey(name)) {
                derived.add(new Property(name, middle));
            }
        });
        return new Survey(stated, derived, fields);
    }

    private Map<String, GeoPoint> middles() {
        Map<String, List<GeoPoint>> places = new LinkedHashMap<>();
        fields.forEach(mapped -> places.computeIfAbsent(
                        mapped.field().property(), name -> new ArrayList<>())
                .add(mapped.field().place()));
        Map<String, GeoPoint> middles = new LinkedHashMap<>();
        places.forEach((name, all) -> middles.put(name, middle(all)));
        return middles;
    }

    /**
     * Middle value of each coordinate, so that one misplaced field does not move it; longitudes are
     * counted from the first, so that the date line does not matter.
     */
    private static GeoPoint middle(List<GeoPoint> places) {
        double firstDeg = places.get(0).longitudeDeg();
        double latitudeDeg = median(places.stream().mapToDouble(GeoPoint::latitudeDeg));
        double offsetDeg = median(places.stream()
                .mapToDouble(p -> Math.IEEEremainder(p.longitudeDeg() - firstDeg, 360)));
        return new GeoPoint(latitudeDeg, Math.IEEEremainder(firstDeg + offsetDeg, 360));
    }

    private static double median(DoubleStream values) {
        double[] sorted = values.sorted().toArray();
        return (sorted[(sorted.length - 1) / 2] + sorted[sorted.length / 2]) / 2;
    }
}
