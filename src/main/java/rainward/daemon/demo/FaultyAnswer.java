package rainward.daemon.demo;

import com.sun.net.httpserver.HttpExchange;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.Map;

/**
 * What a service in trouble sends.
 *
 * @param status of HTTP; 0: it hangs up without a word
 * @param headers beside it
 * @param body as sent
 */
record FaultyAnswer(int status, Map<String, String> headers, String body) {

    private static final Map<String, String> PAGE = Map.of("Content-Type", "text/html");
    private static final Map<String, String> DATA = Map.of("Content-Type", "application/json");
    private static final String WEB_PAGE = "<html><body>Reference #18.4f</body></html>";

    /** The fault in place of a good answer. */
    static FaultyAnswer of(FaultSchedule.Fault fault, String good) {
        return switch (fault) {
            case ERROR_500 -> problem(500, "UnexpectedProblem");
            case PROBLEM_503 -> problem(503, "ForecastGridExpired");
            case PAGE_503 -> new FaultyAnswer(503, PAGE, WEB_PAGE);
            case PAGE_200 -> new FaultyAnswer(200, PAGE, WEB_PAGE);
            case EMPTY -> new FaultyAnswer(200, DATA, "");
            case CUT -> new FaultyAnswer(200, DATA, good.substring(0, good.length() / 2));
            case ERROR_INSIDE -> new FaultyAnswer(200, DATA, "{\"error\":\"no data available\"}");
            case NULLS ->
                new FaultyAnswer(
                        200, DATA, "{\"properties\":null,\"features\":null,\"data\":null}");
            case LIMIT -> problem(429, "RateLimit");
            case LIMIT_FOR_MINUTES ->
                new FaultyAnswer(
                        429,
                        Map.of("Content-Type", "text/plain", "Retry-After", "1200"),
                        "slow down");
            case NOT_FOUND -> problem(404, "NotFound");
            case HANG_UP -> new FaultyAnswer(0, Map.of(), "");
        };
    }

    private static FaultyAnswer problem(int status, String title) {
        return new FaultyAnswer(
                status,
                Map.of("Content-Type", "application/problem+json"),
                "{\"title\":\"" + title + "\",\"status\":" + status + "}");
    }

    void give(HttpExchange exchange) throws IOException {
        if (status == 0) {
            exchange.close();
            return;
        }
        byte[] bytes = body.getBytes(StandardCharsets.UTF_8);
        headers.forEach((name, value) -> exchange.getResponseHeaders().add(name, value));
        exchange.sendResponseHeaders(status, bytes.length == 0 ? -1 : bytes.length);
        try (OutputStream out = exchange.getResponseBody()) {
            out.write(bytes);
        }
    }
}
