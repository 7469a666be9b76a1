package rainward.daemon;

import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;

/** Tells the board one note after the other, and keeps those that it confirmed. */
final class TellingPerson implements AutoCloseable {

    static final String FIELD = "MP1 Orchard Strip";

    private static final String TOKEN = "0123456789abcdef0123456789abcdef";

    private final List<String> confirmed = new ArrayList<>();
    private final URI say;
    private final HttpClient client = HttpClient.newBuilder()
            .version(HttpClient.Version.HTTP_1_1)
            .connectTimeout(Duration.ofSeconds(2))
            .build();
    private final Thread thread = new Thread(this::tell, "telling");
    private volatile boolean closed;

    TellingPerson(int port) {
        say = URI.create("http://127.0.0.1:" + port + "/api/1/say");
        thread.setDaemon(true);
        thread.start();
    }

    private void tell() {
        for (int number = 0; !closed; number++) {
            String note = "note-" + number + "-kept";
            try {
                if (isTaken(note)) {
                    synchronized (confirmed) {
                        confirmed.add(note);
                    }
                }
                Thread.sleep(100);
            } catch (IOException down) {
                pause();
            } catch (InterruptedException e) {
                return;
            }
        }
    }

    private boolean isTaken(String note) throws IOException, InterruptedException {
        String body = "{\"key\":\"" + note + "\",\"act\":\"note\",\"parts\":{\"field\":\"" + FIELD
                + "\",\"note\":\"" + note + "\"}}";
        HttpRequest request = HttpRequest.newBuilder(say)
                .timeout(Duration.ofSeconds(10))
                .header("Content-Type", "application/json")
                .header("Cookie", "rainward-form=" + TOKEN)
                .header("X-Rainward-Token", TOKEN)
                .POST(HttpRequest.BodyPublishers.ofString(body))
                .build();
        HttpResponse<String> answer = client.send(request, HttpResponse.BodyHandlers.ofString());
        return answer.statusCode() == 200 && answer.body().contains("\"written\"");
    }

    private void pause() {
        try {
            Thread.sleep(200);
        } catch (InterruptedException e) {
            closed = true;
        }
    }

    List<String> confirmed() {
        synchronized (confirmed) {
            return List.copyOf(confirmed);
        }
    }

    @Override
    public void close() {
        closed = true;
        thread.interrupt();
    }
}
