package floorgauge.app.command;

import floorgauge.app.chain.CourtFinder;
import floorgauge.app.chain.CourtSurvey;
import floorgauge.app.chain.Films;
import floorgauge.court.calibration.CalibrationStatus;
import floorgauge.court.calibration.SavedCourt;
import floorgauge.court.failure.MendableException;
import floorgauge.court.rules.CourtLines;
import floorgauge.court.rules.CourtPoint;
import floorgauge.court.rules.CourtPoints;
import floorgauge.court.rules.PaintedLine;
import floorgauge.court.rules.RuleSet;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Says where the court lies in a film, and how far that can be trusted. */
@Command(
        name = "court",
        mixinStandardHelpOptions = true,
        versionProvider = BuildVersion.class,
        description = "Says where the court lies in a film, and how far that can be trusted.")
final class CourtCommand implements Callable<Integer> {

    /** A quick look: of a camera that moves, so much of the film's beginning. */
    private static final double MOST_SECONDS = 60;

    @Spec
    private CommandSpec spec;

    @Parameters(paramLabel = "FILM", arity = "0..1", description = "A film that shows a court.")
    private Path film;

    @Option(names = "--points", paramLabel = "FILE", description = "Court points marked in a picture of the film.")
    private Path points;

    @Option(
            names = "--saved",
            paramLabel = "FILE",
            description = "A court saved from another film of the same camera place: does it still fit?")
    private Path saved;

    @Option(names = "--save", paramLabel = "FILE", description = "Keep the court for other films of this camera place.")
    private Path save;

    @Option(
            names = "--court",
            paramLabel = "RULES",
            description = "Rule book: fiba, nba, ncaa or nfhs; or a YAML file that describes an odd gym.")
    private String court;

    @Option(
            names = "--picture",
            paramLabel = "FILE",
            description = "Where to draw the court over a frame, as PNG or JPEG; without it, NAME.court.png here.")
    private Path picture;

    @Option(names = "--json", paramLabel = "FILE", description = "Write what was found as JSON.")
    private Path json;

    @Option(names = "--names", description = "List the points and lines that a points file may name, and end.")
    private boolean names;

    @Override
    public Integer call() {
        CourtFinder finder =
                new CourtFinder(Optional.ofNullable(points), Optional.ofNullable(saved), Optional.ofNullable(court));
        if (names) {
            printNames(finder.rules().orElseGet(RuleSet::fiba));
            return ExitCode.DONE;
        }
        if (film == null) {
            throw new ParameterException(spec.commandLine(), "name a film, or --names");
        }
        CourtSurvey survey = finder.survey(film, Films.info(film), MOST_SECONDS);
        CourtReport report = new CourtReport(film, survey);
        report.print(spec.commandLine().getOut());
        report.drawTo(picture == null ? Path.of(film.getFileName() + ".court.png") : picture);
        if (json != null) {
            write(json, report.json());
        }
        if (save != null) {
            save(survey);
        }
        return survey.calibration().status() == CalibrationStatus.NONE ? ExitCode.MENDABLE : ExitCode.DONE;
    }

    private void printNames(RuleSet rules) {
        PrintWriter out = spec.commandLine().getOut();
        for (CourtPoint point : CourtPoints.of(rules)) {
            out.println(String.format(
                    Locale.ROOT,
                    "%-34s %7.3f %7.3f  %s",
                    point.name(),
                    point.floor().xMetres(),
                    point.floor().yMetres(),
                    point.meaning()));
        }
        for (PaintedLine line : CourtLines.of(rules)) {
            out.println(String.format(
                    Locale.ROOT,
                    "%-34s %-15s  %s",
                    CourtLines.nameOf(line),
                    "line",
                    line instanceof PaintedLine.Straight ? "straight" : "arc"));
        }
        out.flush();
    }

    private void save(CourtSurvey survey) {
        if (!survey.courts().isStill()) {
            throw new MendableException(film + ": the camera moves, so there is no one place of the court to save");
        }
        if (survey.calibration().status() == CalibrationStatus.NONE) {
            throw new MendableException(film + ": no court was found, so there is none to save");
        }
        if (RuleSet.named(survey.calibration().rules().name()).isEmpty()) {
            throw new MendableException(film + ": the court of an odd gym's file is not saved; name a rule book");
        }
        write(save, SavedCourt.text(survey.calibration()));
        spec.commandLine().getOut().println(FailureReport.oneLine("saved in " + save));
    }

    private static void write(Path file, String text) {
        try {
            Path partial = file.resolveSibling("." + file.getFileName() + ".partial");
            Files.writeString(partial, text);
            Files.move(partial, file, StandardCopyOption.REPLACE_EXISTING, StandardCopyOption.ATOMIC_MOVE);
        } catch (IOException e) {
            throw new MendableException("cannot write " + file + ": " + e.getMessage() + "; name another file", e);
        }
    }
}
