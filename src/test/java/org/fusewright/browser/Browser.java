package org.fusewright.browser;

import com.microsoft.playwright.Browser.NewContextOptions;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.BrowserType.LaunchOptions;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Playwright;

import org.junit.jupiter.api.extension.ConditionEvaluationResult;
import org.junit.jupiter.api.extension.ExecutionCondition;
import org.junit.jupiter.api.extension.ExtensionContext;
import org.junit.jupiter.api.extension.ExtensionContext.Namespace;
import org.junit.jupiter.api.extension.ParameterContext;
import org.junit.jupiter.api.extension.ParameterResolver;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Gives a test a {@link Page} in the Chromium of this machine; use it with {@code @ExtendWith}.
 *
 * <p>Where there is no Chromium the tests are left out with a notice, or fail when the property
 * {@code fusewright.browser} is {@code required}. The environment variable {@code
 * FUSEWRIGHT_BROWSER} names a browser at another place. One browser serves the whole test run, with
 * a fresh session for each test; what runs before a test gets the same page as the test. It reaches
 * nothing but this machine.
 */
public final class Browser implements ExecutionCondition, ParameterResolver {
    private static final String VARIABLE = "FUSEWRIGHT_BROWSER";
    private static final Namespace NAMESPACE = Namespace.create(Browser.class);
    private static final List<Path> USUAL_PLACES =
            List.of(
                    Path.of("/usr/bin/chromium"),
                    Path.of("/usr/bin/chromium-browser"),
                    Path.of("/usr/bin/google-chrome"),
                    Path.of("/Applications/Chromium.app/Contents/MacOS/Chromium"),
                    Path.of("/Applications/Google Chrome.app/Contents/MacOS/Google Chrome"),
                    Path.of("C:/Program Files/Google/Chrome/Application/chrome.exe"));

    /** A browser that runs until it is closed. */
    public record Running(Playwright playwright, com.microsoft.playwright.Browser chromium)
            implements AutoCloseable {
        @Override
        public void close() {
            playwright.close();
        }
    }

    @Override
    public ConditionEvaluationResult evaluateExecutionCondition(ExtensionContext context) {
        ConditionEvaluationResult decision =
                decide(
                        findProgram(System.getenv()),
                        "required".equals(System.getProperty("fusewright.browser")));
        if (decision.isDisabled()) {
            System.out.println(
                    "Browser test left out: %s, %s"
                            .formatted(
                                    context.getRequiredTestClass().getName(),
                                    decision.getReason().orElseThrow()));
        }
        return decision;
    }

    static ConditionEvaluationResult decide(Optional<Path> program, boolean required) {
        String lack = "there is no Chromium on this machine (" + VARIABLE + " can name one)";
        if (program.isEmpty() && required) {
            throw new IllegalStateException("A browser is required, but " + lack);
        }
        return program.map(found -> ConditionEvaluationResult.enabled("with " + found))
                .orElseGet(() -> ConditionEvaluationResult.disabled(lack));
    }

    static Optional<Path> findProgram(Map<String, String> environment) {
        return Stream.concat(
                        Stream.ofNullable(environment.get(VARIABLE)).map(Path::of),
                        USUAL_PLACES.stream())
                .filter(Files::isExecutable)
                .findFirst();
    }

    @Override
    public boolean supportsParameter(ParameterContext parameter, ExtensionContext context) {
        return parameter.getParameter().getType() == Page.class;
    }

    @Override
    public Page resolveParameter(ParameterContext parameter, ExtensionContext context) {
        Running running =
                context.getRoot()
                        .getStore(NAMESPACE)
                        .computeIfAbsent(Running.class, key -> launch(), Running.class);
        return context.getStore(NAMESPACE)
                .computeIfAbsent(Session.class, key -> Session.of(running), Session.class)
                .page();
    }

    /** The one page of a test, whichever of its methods asks for it. */
    private record Session(BrowserContext context, Page page) implements AutoCloseable {
        static Session of(Running running) {
            BrowserContext context =
                    running.chromium().newContext(new NewContextOptions().setLocale("en-GB"));
            return new Session(context, context.newPage());
        }

        @Override
        public void close() {
            context.close();
        }
    }

    /** Starts the Chromium of this machine. */
    public static Running launch() {
        // Without it the library would fetch browsers of its own.
        Map<String, String> environment = Map.of("PLAYWRIGHT_SKIP_BROWSER_DOWNLOAD", "1");
        Playwright playwright =
                Playwright.create(new Playwright.CreateOptions().setEnv(environment));
        try {
            return new Running(
                    playwright,
                    playwright
                            .chromium()
                            .launch(
                                    new LaunchOptions()
                                            .setExecutablePath(
                                                    findProgram(System.getenv()).orElseThrow())
                                            .setArgs(listFlags())));
        } catch (RuntimeException e) {
            playwright.close();
            throw e;
        }
    }

    private static List<String> listFlags() {
        List<String> flags =
                new ArrayList<>(
                        List.of(
                                "--disable-background-networking",
                                "--disable-component-update",
                                "--disable-domain-reliability",
                                "--disable-sync",
                                "--no-first-run",
                                "--no-pings",
                                "--host-resolver-rules=MAP * ~NOTFOUND, EXCLUDE 127.0.0.1,"
                                        + " EXCLUDE localhost"));
        if ("root".equals(System.getProperty("user.name"))) {
            // Chromium refuses to start its sandbox as root.
            flags.add("--no-sandbox");
        }
        return flags;
    }
}
