package floorgauge.app;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.lang.ArchRule;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;

/** Dependencies between modules point one way; app sees them all, so the rule is held here for the whole reactor. */
class ModuleDirectionTest {

    private static final JavaClasses CLASSES = new ClassFileImporter()
            .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
            .importPackages("floorgauge");

    @Test
    void everyModuleIsLookedAt() {
        Set<String> modules = new TreeSet<>();
        CLASSES.forEach(c -> modules.add(c.getPackageName().split("\\.", -1)[1]));
        assertThat(modules).containsExactly("app", "court", "eval", "events", "sampleclips", "vision");
    }

    @Test
    void modulesFormNoCycle() {
        slices().matching("floorgauge.(*)..").should().beFreeOfCycles().check(CLASSES);
    }

    @Test
    void courtKnowsNoOtherModule() {
        none("court", "vision", "events", "eval", "sampleclips", "app").check(CLASSES);
    }

    @Test
    void visionKnowsCourtAlone() {
        none("vision", "events", "eval", "sampleclips", "app").check(CLASSES);
    }

    @Test
    void eventsKnowsCourtAlone() {
        none("events", "vision", "eval", "sampleclips", "app").check(CLASSES);
    }

    @Test
    void nobodyKnowsApp() {
        none("eval", "app").check(CLASSES);
        none("sampleclips", "app").check(CLASSES);
    }

    @Test
    void eventsIsPlainJava() {
        noClasses()
                .that()
                .resideInAPackage("floorgauge.events..")
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage("org.opencv..", "ai.djl..", "org.bytedeco..", "java.io..", "java.nio.file..")
                .check(CLASSES);
    }

    @Test
    void courtsValuesArePlainJava() {
        noClasses()
                .that()
                .resideInAnyPackage(
                        "floorgauge.court.floor..",
                        "floorgauge.court.track..",
                        "floorgauge.court.rules..",
                        "floorgauge.court.failure..")
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage("org.opencv..", "ai.djl..", "org.bytedeco..", "java.io..")
                .check(CLASSES);
    }

    private static ArchRule none(String module, String... others) {
        String[] packages = new String[others.length];
        for (int i = 0; i < others.length; i++) {
            packages[i] = "floorgauge." + others[i] + "..";
        }
        return noClasses()
                .that()
                .resideInAPackage("floorgauge." + module + "..")
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage(packages);
    }
}
