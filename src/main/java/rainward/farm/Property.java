package rainward.farm;

/**
 * A piece of land with one or more fields, close enough to share a forecast point and a gauge.
 *
 * @param name what the crew calls it
 * @param place where machines arrive and weather is asked for
 */
public record Property(String name, GeoPoint place) {

    public Property {
        Require.named("property name", name);
    }
}
