package rainward.daemon.demo;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import rainward.brief.post.Outgoing;
import rainward.mail.Courier;
import rainward.mail.Delivery;

/** Lays each mail down as a file instead of sending it. */
final class MailFolder implements Courier {

    private final Path folder;

    MailFolder(Path folder) throws IOException {
        this.folder = Files.createDirectories(folder);
    }

    @Override
    public Delivery deliver(Outgoing message) {
        String person = message.key().recipient().replaceAll("@.*", "");
        String name = (message.key().event() + "-" + person)
                .toLowerCase(Locale.ROOT)
                .replaceAll("[^a-z0-9]+", "-");
        try {
            Path file = folder.resolve(name + ".eml");
            Files.write(file, message.content());
            return new Delivery.Accepted("laid down as " + file.getFileName());
        } catch (IOException e) {
            return new Delivery.Passing(
                    folder + " cannot be written: " + e.getMessage(), java.util.Optional.empty());
        }
    }
}
