package rainward.input;

import rainward.farm.Require;

/**
 * An amount that cannot be given, and what would fill it in. A gap stands on the sheet in place of
 * a guess.
 *
 * @param about field, mix or product
 * @param missing what is not known
 * @param remedy what to measure, read or ask for
 */
public record Gap(String about, String missing, String remedy) {

    public Gap {
        Require.named("about", about);
        Require.named("missing", missing);
        Require.named("remedy", remedy);
    }

    /** One line for the sheet. */
    public String text() {
        return about + ": " + missing + " - " + remedy;
    }
}
