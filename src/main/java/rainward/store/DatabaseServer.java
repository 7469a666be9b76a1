package rainward.store;

/**
 * A PostgreSQL server that keeps the records in place of a file.
 *
 * @param url JDBC address of the database, without a password
 * @param user whom the server knows
 * @param password empty where the server does not ask; never shown
 */
public record DatabaseServer(String url, String user, String password) {

    @Override
    public String toString() {
        return url + " as " + user;
    }
}
