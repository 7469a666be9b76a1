package rainward.daemon.settings;

import java.util.Optional;
import java.util.regex.Pattern;

/**
 * Where the records are kept, if not in a file of the data folder.
 *
 * @param secrets where the password may be
 */
record StoreReader(SecretReader secrets) {

    private static final Pattern URL =
            Pattern.compile("jdbc:postgresql://[^/?\\s@]+/[^/?\\s]+(\\?\\S*)?");

    private static final Pattern LOGIN = Pattern.compile("[?&](?i:user|password)=|//[^/]*@");

    private static final String REMEDY = "it must be that of a PostgreSQL database, for instance"
            + " \"jdbc:postgresql://localhost/rainward\"";

    Optional<Settings.Database> database(Section root) {
        boolean there = root.has("store");
        Section store = root.table("store");
        if (!there) {
            return Optional.empty();
        }
        String url = url(store);
        Settings.Database read = new Settings.Database(
                url,
                store.text("user", "must be the name that the database server knows"),
                secrets.secret(store, "password"));
        store.end();
        return Optional.of(read);
    }

    /** A fault does not repeat what stands there: a password may be in it. */
    private static String url(Section store) {
        String url = store.ask("url").asText();
        if (LOGIN.matcher(url).find()) {
            store.reading()
                    .fault(
                            store.path("url"),
                            "holds a user or a password",
                            "take them out: they have keys of their own beside it");
        } else if (!URL.matcher(url).matches()) {
            store.reading().fault(store.path("url"), "is not an address", REMEDY);
        }
        return url;
    }
}
