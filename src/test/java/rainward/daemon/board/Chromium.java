package rainward.daemon.board;

import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.BrowserType;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Playwright;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Assumptions;

/**
 * A real browser of this machine; tests that need one are skipped, by name, where there is none.
 */
final class Chromium implements AutoCloseable {

    /** A telephone in the cab, and the wall of the office. */
    static final int[] PHONE = {360, 740};

    static final int[] OFFICE = {1920, 1080};

    private final Playwright playwright;
    private final Browser browser;

    private Chromium(Path program) {
        this.playwright = Playwright.create(new Playwright.CreateOptions()
                .setEnv(Map.of("PLAYWRIGHT_SKIP_BROWSER_DOWNLOAD", "1")));
        this.browser = playwright
                .chromium()
                .launch(new BrowserType.LaunchOptions()
                        .setExecutablePath(program)
                        .setArgs(List.of("--no-sandbox", "--disable-background-networking")));
    }

    static Chromium start() {
        Optional<Path> program = program();
        Assumptions.assumeTrue(
                program.isPresent(),
                "no Chromium here: install Debian's package chromium, or name one in the variable"
                        + " CHROMIUM");
        return new Chromium(program.get());
    }

    private static Optional<Path> program() {
        return Stream.of(
                        Optional.ofNullable(System.getenv("CHROMIUM")).orElse(""),
                        "/usr/bin/chromium",
                        "/usr/bin/chromium-browser",
                        "/usr/bin/google-chrome")
                .filter(name -> !name.isBlank())
                .map(Path::of)
                .filter(Files::isExecutable)
                .findFirst();
    }

    /** A window of its own, with everything that it complains about. */
    Window window(int[] size) {
        return new Window(browser.newContext(options(size)));
    }

    Window windowWithoutScript(int[] size) {
        return new Window(browser.newContext(options(size).setJavaScriptEnabled(false)));
    }

    private static Browser.NewContextOptions options(int[] size) {
        return new Browser.NewContextOptions()
                .setViewportSize(size[0], size[1])
                .setHasTouch(size == PHONE)
                .setIgnoreHTTPSErrors(true);
    }

    /** A window with its page. */
    static final class Window implements AutoCloseable {

        private final BrowserContext context;
        private final Page page;
        private final List<String> complaints = new ArrayList<>();

        private Window(BrowserContext context) {
            this.context = context;
            this.page = context.newPage();
            page.setDefaultTimeout(30_000);
            page.onConsoleMessage(message -> {
                if (message.type().equals("error")) {
                    complaints.add(message.text());
                }
            });
            page.onPageError(complaints::add);
            page.onDialog(dialog -> {
                complaints.add("dialog: " + dialog.message());
                dialog.dismiss();
            });
        }

        Page page() {
            return page;
        }

        Page open(String address) {
            page.navigate(address);
            return page;
        }

        /**
         * What the page complained about: scripts that broke, rules of content that were broken.
         */
        List<String> complaints() {
            return complaints;
        }

        void offline(boolean gone) {
            context.setOffline(gone);
        }

        @Override
        public void close() {
            context.close();
        }
    }

    @Override
    public void close() {
        browser.close();
        playwright.close();
    }
}
