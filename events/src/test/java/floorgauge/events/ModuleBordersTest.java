package floorgauge.events;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import org.junit.jupiter.api.Test;

/** What events may not know. */
class ModuleBordersTest {

    private static final JavaClasses EVENTS = new ClassFileImporter()
            .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
            .importPackages("floorgauge.events");

    @Test
    void eventsKnowNoNativeLibraryAndNoFiles() {
        noClasses()
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage(
                        "org.opencv..", "nu.pattern..", "org.bytedeco..", "ai.djl..", "java.io..", "java.nio..")
                .check(EVENTS);
    }

    @Test
    void eventsKnowOnlyTheValueTypesOfCourt() {
        noClasses()
                .should()
                .dependOnClassesThat(new DescribedPredicate<JavaClass>("stand elsewhere in the project") {
                    @Override
                    public boolean test(JavaClass other) {
                        String name = other.getPackageName();
                        return name.startsWith("floorgauge.")
                                && !name.startsWith("floorgauge.events")
                                && !name.equals("floorgauge.court.floor")
                                && !name.equals("floorgauge.court.track")
                                && !name.equals("floorgauge.court.rules")
                                && !name.equals("floorgauge.court.failure");
                    }
                })
                .check(EVENTS);
    }
}
