package rainward.farm;

/**
 * A field with where it stands now.
 *
 * @param field as it lies
 * @param status what has been done
 */
public record FieldCase(Field field, FieldStatus status) {

    /** The mix that is in the ground; before it is sown, the one that is wanted first. */
    public String mix() {
        return status.sownMix().orElse(field.wish().mixes().get(0));
    }
}
