package rainward.farm;

/**
 * A field with where it stands now.
 *
 * @param field as it lies
 * @param status what has been done
 */
public record FieldCase(Field field, FieldStatus status) {}
