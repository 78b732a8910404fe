package evenwood;

import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.fields;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;

/** Sound flows one way through the packages; this is the map, and each arrow says why. */
@AnalyzeClasses(packages = "evenwood", importOptions = ImportOption.DoNotIncludeTests.class)
class PackageMapTest {
    @ArchTest static final ArchRule soundKnowsNobody = mayImport("sound")
        .because("where samples come from must not depend on what is made of them");
    @ArchTest static final ArchRule measureKnowsSound = mayImport("measure", "sound")
        .because("a meter hears blocks and knows no opinion, no preset and no screen");
    @ArchTest static final ArchRule rigKnowsNobody = mayImport("rig")
        .because("facts about instruments and boxes are data, true whether or not anybody listens");
    @ArchTest static final ArchRule wiringKnowsRig = mayImport("wiring", "rig")
        .because("the electrical chain is computed from the rig alone, before a note is played");
    @ArchTest static final ArchRule judgeKnowsReadings = mayImport("judge", "sound", "measure", "rig", "wiring")
        .because("a finding compares readings with facts; it must not know what can be turned");
    @ArchTest static final ArchRule eqKnowsRigAndReadings = mayImport("eq", "sound", "measure", "rig")
        .because("what a control does is arithmetic on the rig's controls and on band readings");
    @ArchTest static final ArchRule coachKnowsFindings = mayImport("coach", "sound", "measure", "judge", "rig", "wiring", "eq")
        .because("a move answers a finding; the finding must not bend to the move");
    @ArchTest static final ArchRule liveJoinsOneTake = mayImport("live", "sound", "measure", "judge", "rig", "wiring", "eq", "coach")
        .because("threads are started in one place and nowhere else");
    @ArchTest static final ArchRule journalKeeps = mayImport("journal", "sound", "measure", "judge", "rig", "coach")
        .because("what was kept must be readable without a screen or a device");
    @ArchTest static final ArchRule reportWrites = mayImport("report", "sound", "measure", "judge", "rig", "wiring", "eq", "coach", "live", "journal")
        .because("words and files are made from results; results never from words");
    @ArchTest static final ArchRule cliIsAnEnd = mayImport("cli", "sound", "measure", "judge", "rig", "wiring", "eq", "coach", "live", "journal", "report")
        .because("the terminal must work where there is no window");
    @ArchTest static final ArchRule uiIsAnEnd = mayImport("ui", "sound", "measure", "judge", "rig", "wiring", "eq", "coach", "live", "journal", "report")
        .because("the window must not call commands");

    @ArchTest static final ArchRule onlySoundOpensDevices = only("sound", "javax.sound..")
        .because("devices and decoders stop at the door; everyone else sees AudioBlock");
    @ArchTest static final ArchRule onlySoundDecodes = only("sound", "com.jcraft..", "javazoom..", "net.sourceforge.javaflacencoder..")
        .because("a decoder or encoder may be replaced without anyone noticing");
    @ArchTest static final ArchRule onlySoundKnowsQueues = only("sound", "org.jctools..")
        .because("threads meet in one place, the ring");
    @ArchTest static final ArchRule tarsosStopsAtTheDoor = noClasses().that().resideOutsideOfPackages("evenwood.sound..", "evenwood.measure..")
        .should().dependOnClassesThat().resideInAPackage("be.tarsos..")
        .because("its types have their own conventions; ours carry units");
    @ArchTest static final ArchRule neverShellOut = noClasses()
        .should().dependOnClassesThat().haveNameMatching("be\\.tarsos\\.dsp\\.io\\.(PipedAudioStream|PipeDecoder|PipedAudioStream.*)|.*FFMPEGDownloader.*")
        .orShould().callMethod("be.tarsos.dsp.io.jvm.AudioDispatcherFactory", "fromPipe", "java.lang.String", "int", "int", "int")
        .because("those run shell commands and download a program");
    @ArchTest static final ArchRule onlyCliParsesArguments = only("cli", "picocli..")
        .because("commands are thin; the work is in plain classes that the window uses too");
    @ArchTest static final ArchRule onlyReportAndJournalWriteJson = noClasses().that().resideOutsideOfPackages("evenwood.report..", "evenwood.journal..")
        .should().dependOnClassesThat().resideInAPackage("com.fasterxml..")
        .because("one place names the fields of the contract; the journal names none, it keeps records as they are");
    @ArchTest static final ArchRule onlyReportWritesPdf = only("report", "org.apache.pdfbox..")
        .because("a sheet is drawn once and written in several ways in one place");
    @ArchTest static final ArchRule onlyRigReadsYaml = only("rig", "org.snakeyaml..")
        .because("one place turns a preset's mistake into file, line and field");
    @ArchTest static final ArchRule onlyJournalKnowsSql = only("journal", "java.sql..", "org.sqlite..")
        .because("the store may change without the trends noticing");
    @ArchTest static final ArchRule onlyUiKnowsJavaFx = only("ui", "javafx..", "atlantafx..")
        .because("meters must run in the terminal and in tests with no screen");
    @ArchTest static final ArchRule uiModelsHoldNoWidgets = noClasses().that().resideInAnyPackage("evenwood.ui.model..", "evenwood.ui.scale..")
        .should().dependOnClassesThat().resideInAnyPackage("javafx.scene..", "javafx.stage..")
        .because("a model that holds a widget cannot be tested without a screen").allowEmptyShould(true);

    @ArchTest static final ArchRule namesSayWhat = noClasses()
        .should().haveNameMatching(".*(Manager|Helper|Utils?|Impl|Base|Common)$")
        .because("a class is named after what it does");
    @ArchTest static final ArchRule noSharedState = fields().that().areStatic().should().beFinal()
        .because("state has one owner");
    @ArchTest static final ArchRule noLoops = slices().matching("evenwood.(*)..").should().beFreeOfCycles()
        .because("what flows in a circle cannot be understood from one end");

    private static ArchRule only(String ours, String... outside) {
        return noClasses().that().resideOutsideOfPackage("evenwood." + ours + "..")
            .should().dependOnClassesThat().resideInAnyPackage(outside);
    }

    /** Classes of a package may use their own, the named ones, and anything from outside the project. */
    private static com.tngtech.archunit.lang.syntax.elements.ClassesShouldConjunction mayImport(String ours, String... others) {
        String[] allowed = new String[others.length + 1];
        allowed[0] = "evenwood." + ours + "..";
        for (int i = 0; i < others.length; i++) {
            allowed[i + 1] = "evenwood." + others[i] + "..";
        }
        return classes().that().resideInAPackage(allowed[0])
            .should().onlyDependOnClassesThat(resideInAnyPackage(allowed).or(
                com.tngtech.archunit.base.DescribedPredicate.not(JavaClass.Predicates.resideInAPackage("evenwood.."))));
    }
}
