package rainward;

import static com.tngtech.archunit.base.DescribedPredicate.describe;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.fields;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noFields;

import com.tngtech.archunit.core.domain.JavaAccess;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * The list of packages is the architecture: who may read whom, and what the core must not touch.
 */
class PackageFlowTest {

    /** The pure core; a package may import only those before it. */
    static final List<String> CORE = List.of(
            "farm",
            "weather",
            "soil",
            "stand",
            "readiness",
            "queue",
            "window",
            "cycle",
            "input",
            "brief",
            "replay");

    /** Each imports the core and no other edge. */
    static final List<String> EDGES = List.of("intake", "feed", "store", "mail", "board");

    /** The one package that sees all others. */
    static final String TOP = "daemon";

    /** Core packages that are held to less than all before them. */
    static final Map<String, List<String>> NARROWER =
            Map.of("input", List.of("farm", "weather", "queue"));

    static final JavaClasses PROGRAM = new ClassFileImporter()
            .withImportOption(location -> !location.contains("test-classes"))
            .importPackages("rainward");

    static Stream<String> everyPackage() {
        return Stream.concat(Stream.concat(CORE.stream(), EDGES.stream()), Stream.of(TOP));
    }

    static List<String> mayImport(String name) {
        if (name.equals(TOP)) {
            return everyPackage().toList();
        }
        if (EDGES.contains(name)) {
            return CORE;
        }
        return NARROWER.getOrDefault(name, CORE.subList(0, CORE.indexOf(name)));
    }

    static String[] trees(Stream<String> names) {
        return names.map(name -> "rainward." + name + "..").toArray(String[]::new);
    }

    static String[] core() {
        return trees(CORE.stream());
    }

    @Nested
    class Flow {

        @Test
        void everyClassLivesInAPackageOfTheList() {
            classes().should().resideInAnyPackage(trees(everyPackage())).check(PROGRAM);
        }

        @ParameterizedTest
        @MethodSource("rainward.PackageFlowTest#everyPackage")
        void onlyEarlierPackagesAreImportedBy(String name) {
            String[] forbidden = trees(everyPackage()
                    .filter(other -> !other.equals(name) && !mayImport(name).contains(other)));

            noClasses()
                    .that()
                    .resideInAPackage("rainward." + name + "..")
                    .should()
                    .dependOnClassesThat()
                    .resideInAnyPackage(forbidden)
                    .allowEmptyShould(true)
                    .check(PROGRAM);
        }
    }

    @Nested
    class CorePurity {

        /** Types that stay in memory although their package speaks of files. */
        static final Set<String> IN_MEMORY = Set.of(
                "java.io.ByteArrayInputStream",
                "java.io.ByteArrayOutputStream",
                "java.io.IOException",
                "java.io.OutputStream",
                "java.io.StringReader",
                "java.io.StringWriter",
                "java.io.UncheckedIOException");

        @Test
        void readsAndWritesNothingOutsideTheProcess() {
            noClasses()
                    .that()
                    .resideInAnyPackage(core())
                    .should()
                    .dependOnClassesThat(describe("reach outside the process", CorePurity::outside))
                    .allowEmptyShould(true)
                    .check(PROGRAM);
        }

        @Test
        void asksNobodyForTheTimeThePlaceOrChance() {
            noClasses()
                    .that()
                    .resideInAnyPackage(core())
                    .should()
                    .accessTargetWhere(
                            describe("reads a clock, the machine or luck", Ambient::isRead))
                    .orShould()
                    .dependOnClassesThat(describe("are a clock or luck", Ambient::isType))
                    .allowEmptyShould(true)
                    .check(PROGRAM);
        }

        @Test
        void keepsNoStateBetweenCalls() {
            fields().that()
                    .areDeclaredInClassesThat()
                    .resideInAnyPackage(core())
                    .and()
                    .areStatic()
                    .should()
                    .beFinal()
                    .allowEmptyShould(true)
                    .check(PROGRAM);
        }

        @Test
        void sharesNoHolderThatCallsCouldChange() {
            noFields()
                    .that()
                    .areDeclaredInClassesThat()
                    .resideInAnyPackage(core())
                    .and()
                    .areStatic()
                    .should()
                    .haveRawType(describe(
                            "a holder for concurrent changes",
                            type -> type.getPackageName().startsWith("java.util.concurrent")
                                    || type.isAssignableTo(ThreadLocal.class)))
                    .allowEmptyShould(true)
                    .check(PROGRAM);
        }

        private static boolean outside(JavaClass type) {
            return Stream.of(
                                    "java.io",
                                    "java.net",
                                    "java.nio",
                                    "java.sql",
                                    "java.util.logging",
                                    "org.slf4j")
                            .anyMatch(tree -> type.getPackageName().equals(tree)
                                    || type.getPackageName().startsWith(tree + "."))
                    && !type.getPackageName().equals("java.nio.charset")
                    && !IN_MEMORY.contains(type.getName());
        }
    }

    /** What would make two runs on the same input differ. */
    static final class Ambient {

        private static final Set<String> TYPES = Set.of(
                "java.time.Clock",
                "java.time.InstantSource",
                "java.util.concurrent.ThreadLocalRandom",
                "java.security.SecureRandom");

        private static final Set<String> CALLS = Set.of(
                "java.lang.Math.random",
                "java.lang.StrictMath.random",
                "java.lang.System.console",
                "java.lang.System.currentTimeMillis",
                "java.lang.System.err",
                "java.lang.System.getProperty",
                "java.lang.System.getenv",
                "java.lang.System.in",
                "java.lang.System.nanoTime",
                "java.lang.System.out",
                "java.time.ZoneId.systemDefault",
                "java.util.Calendar.getInstance",
                "java.util.Locale.getDefault",
                "java.util.TimeZone.getDefault",
                "java.util.UUID.randomUUID",
                "org.apache.commons.rng.simple.RandomSource.createInt",
                "org.apache.commons.rng.simple.RandomSource.createIntArray",
                "org.apache.commons.rng.simple.RandomSource.createLong",
                "org.apache.commons.rng.simple.RandomSource.createLongArray");

        /** Harmless with an argument (a seed, an instant, a generator), ambient without. */
        private static final Set<String> BARE_CALLS = Set.of(
                "java.util.Collections.shuffle(java.util.List)",
                "java.util.Date.<init>()",
                "java.util.Random.<init>()",
                "java.util.SplittableRandom.<init>()",
                "org.apache.commons.rng.simple.RandomSource.create()");

        private Ambient() {}

        static boolean isType(JavaClass type) {
            return TYPES.contains(type.getName());
        }

        static boolean isRead(JavaAccess<?> access) {
            var target = access.getTarget();
            String name = target.getOwner().getName() + "." + target.getName();
            return CALLS.contains(name)
                    || BARE_CALLS.contains(target.getFullName())
                    || (name.startsWith("java.time.") && target.getName().equals("now"))
                    || (name.startsWith("org.shredzone.commons.suncalc.")
                            && Set.of("now", "today", "midnight").contains(target.getName()));
        }
    }
}
