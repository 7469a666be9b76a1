package rainward.input.record;

import rainward.farm.Require;

/**
 * Words about a field, or about nothing in particular.
 *
 * @param words as said
 */
public record Note(String words) {

    public Note {
        Require.named("words", words);
    }
}
