package rainward.farm;

import java.util.Optional;

/**
 * A field with its boundary, where one is known.
 *
 * @param field as it lies
 * @param boundaryGeoJson a Polygon or MultiPolygon geometry (RFC 7946), kept as it came
 */
public record MappedField(Field field, Optional<String> boundaryGeoJson) {}
