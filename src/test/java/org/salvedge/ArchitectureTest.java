package org.salvedge;

import static com.tngtech.archunit.base.DescribedPredicate.not;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.equivalentTo;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.fields;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.Architectures.layeredArchitecture;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;
import java.io.Serializable;

/** The packages are a one-way street, and each library has its place. */
@AnalyzeClasses(packages = "org.salvedge", importOptions = ImportOption.DoNotIncludeTests.class)
class ArchitectureTest {
    @ArchTest
    static final ArchRule packagesPointDown = layeredArchitecture()
            .consideringOnlyDependenciesInLayers()
            .withOptionalLayers(true)
            .layer("cli")
            .definedBy("..cli..")
            .layer("demo")
            .definedBy("..demo..")
            .layer("page")
            .definedBy("..page..")
            .layer("report")
            .definedBy("..report..")
            .layer("bench")
            .definedBy("..bench..")
            .layer("worth")
            .definedBy("..worth..")
            .layer("yield")
            .definedBy("..yield..")
            .layer("ledger")
            .definedBy("..ledger..")
            .layer("manifest")
            .definedBy("..manifest..")
            .layer("shop")
            .definedBy("..shop..")
            .layer("stats")
            .definedBy("..stats..")
            .whereLayer("cli")
            .mayNotBeAccessedByAnyLayer()
            .whereLayer("demo")
            .mayOnlyBeAccessedByLayers("cli")
            .whereLayer("page")
            .mayOnlyBeAccessedByLayers("cli")
            .whereLayer("report")
            .mayOnlyBeAccessedByLayers("cli", "page")
            .whereLayer("bench")
            .mayOnlyBeAccessedByLayers("cli", "page", "report")
            .whereLayer("worth")
            .mayOnlyBeAccessedByLayers("cli", "page", "report", "bench")
            .whereLayer("yield")
            .mayOnlyBeAccessedByLayers("cli", "page", "report", "bench", "worth")
            .whereLayer("ledger")
            .mayOnlyBeAccessedByLayers("cli", "demo", "page", "report", "bench", "worth", "yield")
            .whereLayer("manifest")
            .mayOnlyBeAccessedByLayers("cli", "demo", "page", "report", "bench", "worth", "yield")
            .because("a reader finds everything by walking down");

    @ArchTest
    static final ArchRule noCycles =
            slices().matching("org.salvedge.(*)..").should().beFreeOfCycles();

    @ArchTest
    static final ArchRule statsKnowNothing = noClasses()
            .that()
            .resideInAPackage("..stats..")
            .should()
            .dependOnClassesThat(
                    resideInAnyPackage("org.salvedge.shop..", "java.io..", "java.nio.file..", "java.time..")
                            .and(not(equivalentTo(Serializable.class))))
            .because("statistics are pure functions of numbers; what was fitted may be kept");

    @ArchTest
    static final ArchRule sqlLivesInLedger = noClasses()
            .that()
            .resideOutsideOfPackage("..ledger..")
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage("java.sql..", "org.sqlite..")
            .because("rows are not records");

    @ArchTest
    static final ArchRule poiLivesInReportAndManifest = noClasses()
            .that()
            .resideOutsideOfPackages("..report..", "..manifest..")
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage("org.apache.poi..")
            .because("reports are built from plain row records");

    @ArchTest
    static final ArchRule tablesawLivesInYield = noClasses()
            .that()
            .resideOutsideOfPackage("..yield..")
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage("tech.tablesaw..")
            .because("its first touch costs a second, and its columns are not our records");

    @ArchTest
    static final ArchRule picocliLivesInCli = noClasses()
            .that()
            .resideOutsideOfPackage("..cli..")
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage("picocli..")
            .because("nothing under test needs a command line");

    @ArchTest
    static final ArchRule staticsAreFinal = fields().that()
            .areStatic()
            .and()
            .doNotHaveModifier(com.tngtech.archunit.core.domain.JavaModifier.SYNTHETIC)
            .should()
            .beFinal()
            .because("no state outlives a call");

    @ArchTest
    static final ArchRule copiesKeepTheirOrder = noClasses()
            .should()
            .callMethod(java.util.Map.class, "copyOf", java.util.Map.class)
            .orShould()
            .callMethod(java.util.Set.class, "copyOf", java.util.Collection.class)
            .because("the order of such copies differs from run to run, and so would what is printed from them");
}
