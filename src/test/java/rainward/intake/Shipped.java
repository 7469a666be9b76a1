package rainward.intake;

import static java.util.Objects.requireNonNull;

import rainward.farm.Mix;
import rainward.farm.Species;

/** Species and mixes that come with the program, for tests of what grows from them. */
public final class Shipped {
    static final SharedTables TABLES = new SharedTables(TableFolder.onClassPath());

    private Shipped() {}

    public static Species species(String name) {
        return requireNonNull(TABLES.species().get(name), name);
    }

    /** A mix with the dates of southern Michigan. */
    public static Mix mix(String name) {
        return requireNonNull(TABLES.mixes("southern michigan").get(name), name);
    }
}
