package rainward.daemon.board;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.CookieManager;
import java.net.Socket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.net.ssl.SSLContext;
import okhttp3.tls.HandshakeCertificates;
import okhttp3.tls.HeldCertificate;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import rainward.board.door.Person;
import rainward.board.door.PinHash;
import rainward.board.door.Role;

/** Who comes in and who does not, asked without a browser. */
@ExtendWith(BoardHall.class)
class BoardDoorIT {

    static final ObjectMapper JSON = new ObjectMapper();

    /** Somebody with a cookie jar. */
    static final class Caller {

        private final HttpClient client;
        private final String link;

        Caller(String link) {
            this.link = link;
            this.client =
                    HttpClient.newBuilder().cookieHandler(new CookieManager()).build();
        }

        /** Trusts the certificate that a board made for itself, and no other. */
        Caller(String link, Path home) {
            this.link = link;
            this.client = HttpClient.newBuilder()
                    .cookieHandler(new CookieManager())
                    .sslContext(trusting(home.resolve("board-certificate.pem")))
                    .build();
        }

        private static SSLContext trusting(Path pem) {
            try {
                HeldCertificate held = HeldCertificate.decode(Files.readString(pem));
                return new HandshakeCertificates.Builder()
                        .addTrustedCertificate(held.certificate())
                        .build()
                        .sslContext();
            } catch (IOException e) {
                throw new AssertionError(e);
            }
        }

        HttpResponse<String> get(String path) {
            return send(
                    HttpRequest.newBuilder(URI.create(link + path)).header("Accept", "text/html"));
        }

        HttpResponse<String> post(String path, String form, String... headers) {
            HttpRequest.Builder request = HttpRequest.newBuilder(URI.create(link + path))
                    .header("Content-Type", "application/x-www-form-urlencoded")
                    .header("Accept", "application/json")
                    .POST(HttpRequest.BodyPublishers.ofString(form));
            if (headers.length > 0) {
                request.headers(headers);
            }
            return send(request);
        }

        HttpResponse<String> json(String path, String token, String body) {
            return send(HttpRequest.newBuilder(URI.create(link + path))
                    .header("Content-Type", "application/json")
                    .header("X-Rainward-Token", token)
                    .POST(HttpRequest.BodyPublishers.ofString(body)));
        }

        private HttpResponse<String> send(HttpRequest.Builder request) {
            try {
                return client.send(request.build(), HttpResponse.BodyHandlers.ofString());
            } catch (IOException e) {
                throw new AssertionError(e);
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
                throw new AssertionError(e);
            }
        }

        String token(String path) {
            Matcher token = Pattern.compile("name=\"token\" value=\"([0-9a-f]+)\"")
                    .matcher(get(path).body());
            assertThat(token.find()).isTrue();
            return token.group(1);
        }

        HttpResponse<String> ring(String name, String pin) {
            return post("door", "token=" + token("door") + "&name=" + name + "&pin=" + pin);
        }
    }

    @Nested
    class OnThisMachine {

        private static BoardStage stage;

        @BeforeAll
        static void open() {
            stage = BoardHall.ofThisMachine();
        }

        private Caller caller;

        @BeforeEach
        void call() {
            caller = new Caller(stage.link());
        }

        /** By hand: HTTP clients do not let a caller name another host. */
        private String withHost(String host) throws IOException {
            URI at = URI.create(stage.link());
            try (Socket socket = new Socket(at.getHost(), at.getPort())) {
                OutputStream out = socket.getOutputStream();
                out.write(("GET / HTTP/1.1\r\nHost: " + host + "\r\nConnection: close\r\n\r\n")
                        .getBytes(StandardCharsets.US_ASCII));
                InputStream in = socket.getInputStream();
                return new String(in.readAllBytes(), StandardCharsets.UTF_8);
            }
        }

        @Test
        void strangersNameForThisMachineIsTurnedAway() throws IOException {
            assertThat(withHost("rebound.example")).startsWith("HTTP/1.1 421");
            assertThat(withHost("localhost.rebound.example:8640")).startsWith("HTTP/1.1 421");
            assertThat(withHost("localhost:8640")).startsWith("HTTP/1.1 200");
        }

        @Test
        void everyAnswerCarriesItsRulesOfContent() {
            var headers = caller.get("").headers();

            assertThat(headers.firstValue("Content-Security-Policy").orElse(""))
                    .contains("default-src 'none'", "script-src 'self'", "frame-ancestors 'none'")
                    .doesNotContain("unsafe");
            assertThat(headers.firstValue("X-Content-Type-Options")).contains("nosniff");
            assertThat(headers.firstValue("Cache-Control")).contains("no-store");
            assertThat(headers.firstValue("Set-Cookie").orElse(""))
                    .contains("HttpOnly", "SameSite=Strict");
            assertThat(headers.firstValue("Server")).isEmpty();
        }

        @Test
        void wordWithoutTheTokenOfItsSessionIsTurnedAway() {
            String form = "&key=k1&act=NOTE&field=KL4+Point&note=forged";

            assertThat(caller.post("say", "token=0000" + form).statusCode()).isEqualTo(403);
            assertThat(caller.post("say", form).statusCode()).isEqualTo(403);
            String token = caller.token("");
            assertThat(caller.post("say", "token=" + token + form, "Origin", "http://evil.example")
                            .statusCode())
                    .isEqualTo(403);
            assertThat(new Caller(stage.link())
                            .post("say", "token=" + token + form)
                            .statusCode())
                    .as("a token of another session")
                    .isEqualTo(403);
            assertThat(stage.history("KL4 Point")).doesNotContain("forged");
            assertThat(caller.post("say", "token=" + token + form).statusCode()).isEqualTo(200);
        }

        @Test
        void moreThanABodyMayHoldIsTurnedAway() {
            String token = caller.token("");

            assertThat(caller.post("say", "token=" + token + "&note=" + "x".repeat(70_000))
                            .statusCode())
                    .isEqualTo(413);
        }

        @Test
        void nothingIsListedAndNoFileOutsideIsServed() {
            for (String path : List.of(
                    "board/",
                    "..%2f..%2fetc%2fpasswd",
                    "db/V1__first_season.sql",
                    "rainward.toml")) {
                assertThat(caller.get(path).statusCode()).as(path).isBetween(400, 404);
            }
        }

        @Test
        void wayBackLeadsNowhereElse() {
            String token = caller.token("");

            HttpResponse<String> answer = caller.post(
                    "say",
                    "token=" + token
                            + "&key=k2&act=NOTE&field=KL4+Point&note=x&back=//evil.example",
                    "Accept",
                    "text/html");

            assertThat(answer.headers().firstValue("Location").orElse("/")).doesNotContain("evil");
        }

        @Test
        void programSaysAWordAndReadsTheOrder() throws IOException {
            JsonNode session = JSON.readTree(caller.get("api/1/session").body());
            assertThat(session.path("role").asText()).isEqualTo("lead");

            HttpResponse<String> said = caller.json(
                    "api/1/say",
                    session.path("token").asText(),
                    "{\"key\":\"p1\",\"act\":\"note\",\"parts\":{\"field\":\"KL4 Point\",\"note\":\"by program\"}}");

            assertThat(said.statusCode()).isEqualTo(200);
            assertThat(stage.history("KL4 Point")).contains("by program");
            assertThat(caller.json("api/1/say", session.path("token").asText(), "{}")
                            .statusCode())
                    .isEqualTo(400);
            JsonNode order = JSON.readTree(caller.get("api/1/order").body());
            assertThat(order.path("items").size()).isGreaterThan(20);
        }

        @Test
        void documentNamesEveryPathAndTheAnswersKeepToIt() throws IOException {
            stage.mail();
            JsonNode document = JSON.readTree(caller.get("api/1/openapi.json").body());

            assertThat(document.path("openapi").asText()).startsWith("3.1");
            assertThat(document.path("paths").fieldNames())
                    .toIterable()
                    .containsExactlyInAnyOrder(
                            "/api/1/order",
                            "/api/1/ready",
                            "/api/1/windows",
                            "/api/1/outbox",
                            "/api/1/session",
                            "/api/1/say",
                            "/health");
            for (var path : document.path("paths").properties()) {
                JsonNode responses = path.getValue().at("/get/responses");
                if (!responses.isMissingNode()) {
                    HttpResponse<String> answer = caller.get(path.getKey().substring(1));
                    assertThat(answer.statusCode()).as(path.getKey()).isEqualTo(200);
                    JsonNode schema = responses.at("/200/content/application~1json/schema");
                    keeps(JSON.readTree(answer.body()), schema, path.getKey());
                }
            }
        }

        /** Every name and kind of an answer stands in the schema, as deep as it goes. */
        private static void keeps(JsonNode answer, JsonNode schema, String place) {
            String kinds = schema.path("type").toString();
            if (answer.isObject() && schema.path("additionalProperties").isObject()) {
                answer.properties()
                        .forEach(e -> keeps(
                                e.getValue(),
                                schema.path("additionalProperties"),
                                place + "." + e.getKey()));
            } else if (answer.isObject()) {
                assertThat(kinds).as(place).contains("object");
                answer.properties().forEach(e -> {
                    JsonNode inside = schema.path("properties").path(e.getKey());
                    assertThat(inside.isObject()).as(place + "." + e.getKey()).isTrue();
                    keeps(e.getValue(), inside, place + "." + e.getKey());
                });
            } else if (answer.isArray()) {
                assertThat(kinds).as(place).contains("array");
                answer.forEach(entry -> keeps(entry, schema.path("items"), place + "[]"));
            } else if (!answer.isNull()) {
                String kind = answer.isTextual()
                        ? "string"
                        : answer.isBoolean()
                                ? "boolean"
                                : answer.isIntegralNumber() ? "integer|number" : "number";
                assertThat(kinds).as(place).containsPattern(kind);
            }
        }

        @Test
        void apiTellsWindowsAndMailByTheNamesOfTheCommands() throws IOException {
            stage.mail();
            JsonNode outbox = JSON.readTree(caller.get("api/1/outbox").body());
            JsonNode windows = JSON.readTree(caller.get("api/1/windows").body());

            assertThat(outbox.path(0).fieldNames())
                    .toIterable()
                    .containsExactly(
                            "id",
                            "state",
                            "recipient",
                            "subject",
                            "writtenAt",
                            "tries",
                            "nextTryAt",
                            "lastWords");
            assertThat(outbox.findValuesAsText("id")).isNotEmpty().doesNotHaveDuplicates();
            assertThat(windows.isArray()).isTrue();
            assertThat(windows.size())
                    .isEqualTo(stage.standing()
                            .round()
                            .orElseThrow()
                            .outlook()
                            .windows()
                            .size());
        }

        @Test
        void whoeverIsNotKnownLeavesNothingBehind() throws IOException {
            for (String path : List.of("", "ground", "api/1/order", "api/1/session", "metrics")) {
                assertThat(new Caller(stage.link()).get(path).statusCode()).isEqualTo(200);
            }
            String token = caller.token("me");
            assertThat(caller.post("me", "token=" + token + "&name=Marnie").statusCode())
                    .isEqualTo(303);

            assertThat(caller.get("me").body()).contains("you are <a href=\"/me\">Marnie");
            assertThat(stage.home().resolve("board-sessions")).isEmptyDirectory();
        }

        @Test
        void formOfAnotherPortOfThisMachineIsTurnedAway() {
            String form = "token=" + caller.token("") + "&key=k9&act=NOTE&field=KL4+Point&note=x";

            assertThat(caller.post("say", form, "Origin", "http://127.0.0.1:1").statusCode())
                    .isEqualTo(403);
            String own = stage.link().replaceFirst("/$", "");
            assertThat(caller.post("say", form, "Origin", own).statusCode()).isEqualTo(200);
        }

        @Test
        void calendarIsReadByAForeignParser() throws Exception {
            String text = caller.get("calendar.ics").body();

            var calendar = new net.fortuna.ical4j.data.CalendarBuilder()
                    .build(new java.io.StringReader(text));

            assertThat(calendar.getComponents("VEVENT")).isNotEmpty();
        }

        @Test
        void metricsAndHealthAreTold() throws IOException {
            assertThat(caller.get("metrics").body())
                    .containsPattern("rainward_fields_waiting [1-9]")
                    .contains("rainward_forecast_age_seconds{property=\"Mill Pond\"}");
            assertThat(JSON.readTree(caller.get("health").body()).path("status").asText())
                    .isEqualTo("well");
        }
    }

    @Nested
    class FromTheNetwork {

        private static BoardStage stage;
        private static Path home;

        @BeforeAll
        static void open() {
            stage = BoardHall.ofTheNetwork();
            home = stage.home();
        }

        private Caller caller;

        @BeforeEach
        void call() {
            caller = new Caller(stage.link(), home);
        }

        @Test
        void strangerSeesTheDoorAlone() {
            assertThat(stage.link()).startsWith("https://");
            assertThat(caller.get("").statusCode()).isEqualTo(303);
            assertThat(caller.get("api/1/order").statusCode()).isIn(303, 401);
            assertThat(caller.get("metrics").statusCode()).isIn(303, 401);
            assertThat(caller.get("calendar.ics").statusCode()).isIn(303, 401);
        }

        @Test
        void sessionIsStoredForWhomThePinKnowsAndNobodyElse() throws IOException {
            Path sessions = home.resolve("board-sessions");
            long before = stored(sessions);
            caller.get("");
            caller.get("door");
            caller.ring("Visitor", "271829");
            assertThat(stored(sessions)).isEqualTo(before);

            caller.ring("Visitor", "271828");

            assertThat(stored(sessions)).isEqualTo(before + 1);
            assertThat(caller.post("leave", "token=" + caller.token("me")).statusCode())
                    .isEqualTo(303);
            assertThat(stored(sessions)).isEqualTo(before);
        }

        private static long stored(Path sessions) throws IOException {
            try (var files = Files.list(sessions)) {
                return files.count();
            }
        }

        @Test
        void rightPinOpensAndTheRoleHolds() {
            assertThat(caller.ring("Visitor", "271828").statusCode()).isEqualTo(303);
            assertThat(caller.get("").body()).contains("you are", "Visitor").doesNotContain("DONE");
            String token = caller.token("me");
            assertThat(caller.post(
                                    "say",
                                    "token=" + token + "&key=a&act=NOTE&field=KL4+Point&note=n")
                            .statusCode())
                    .isEqualTo(403);

            Caller crew = new Caller(stage.link(), home);
            crew.ring("Tobin", "602214");
            String crewToken = crew.token("");
            assertThat(crew.post(
                                    "say",
                                    "token=" + crewToken + "&key=b&act=NOTE&field=KL4+Point&note=n")
                            .statusCode())
                    .isEqualTo(200);
            assertThat(crew.post("say", "token=" + crewToken + "&key=c&act=DROP&field=KL4+Point")
                            .statusCode())
                    .isEqualTo(403);
        }

        @Test
        void guessingIsSlowedDownAndARightPinIsNotTakenMeanwhile() {
            for (int guess = 0; guess < 5; guess++) {
                assertThat(caller.ring("Dell", "00000" + guess).statusCode()).isEqualTo(401);
            }

            HttpResponse<String> right = caller.ring("Dell", "481516");

            assertThat(right.statusCode()).isEqualTo(401);
            assertThat(right.body()).contains("Too many wrong PINs");
        }

        @Test
        void calendarOfAPersonIsReadWithoutASessionAtItsOwnAddressAlone() throws Exception {
            caller.ring("Tobin", "602214");
            Matcher own = Pattern.compile("href=\"/(calendar/[0-9a-f]{40}\\.ics)\"")
                    .matcher(caller.get("me").body());
            assertThat(own.find()).isTrue();
            Caller program = new Caller(stage.link(), home);

            String text = program.get(own.group(1)).body();

            var events = new net.fortuna.ical4j.data.CalendarBuilder()
                    .build(new java.io.StringReader(text))
                    .getComponents("VEVENT");
            long planned = stage.standing().round().orElseThrow().brief().orders().today().stream()
                    .flatMap(line -> line.stages().stream())
                    .filter(piece -> piece.hands().person().equals("Tobin"))
                    .count();
            assertThat(events).hasSizeGreaterThanOrEqualTo((int) planned).isNotEmpty();
            assertThat(text).doesNotContain("Marnie");
            assertThat(program.get("calendar/" + "0".repeat(40) + ".ics").statusCode())
                    .isEqualTo(404);
        }

        @Test
        void whoIsDismissedIsOutAtOnce() {
            PeopleBook people = new PeopleBook(stage.office());
            people.admit(new Person("Ruth", Role.CREW, PinHash.of("314159")));
            caller.ring("Ruth", "314159");
            assertThat(caller.get("").statusCode()).isEqualTo(200);

            people.dismiss("Ruth");

            assertThat(caller.get("").statusCode()).isEqualTo(303);
        }
    }
}
