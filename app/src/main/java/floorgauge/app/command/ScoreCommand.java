package floorgauge.app.command;

import floorgauge.app.chain.RemeasuredFilms;
import floorgauge.app.chain.SettingFiles;
import floorgauge.court.failure.MendableException;
import floorgauge.eval.events.EventTolerance;
import floorgauge.eval.fit.FittedStandards;
import floorgauge.eval.fit.StandardsFit;
import floorgauge.eval.score.Comparison;
import floorgauge.eval.score.FilmPairing;
import floorgauge.eval.score.LabelFolder;
import floorgauge.eval.score.ResultsReader;
import floorgauge.eval.score.RunSummary;
import floorgauge.eval.score.ScoreCsv;
import floorgauge.eval.score.ScoreJson;
import floorgauge.eval.score.ScorePage;
import floorgauge.eval.score.ScoreReport;
import floorgauge.eval.score.ScoreText;
import floorgauge.eval.statistics.ClipBootstrap;
import floorgauge.events.standards.Standards;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Scores a results folder against labels: how far each finding can be trusted. */
@Command(
        name = "score",
        mixinStandardHelpOptions = true,
        versionProvider = BuildVersion.class,
        description = "Scores results against labels: how far each finding can be trusted.")
final class ScoreCommand implements Callable<Integer> {

    @Spec
    private CommandSpec spec;

    @Parameters(paramLabel = "LABELS", description = "A label file, or a folder of them.")
    private Path labels;

    @Option(
            names = "--against",
            paramLabel = "RESULTS",
            required = true,
            description = "The folder that measure wrote, or one film's folder in it.")
    private Path results;

    @Option(
            names = "--within",
            paramLabel = "SECONDS",
            defaultValue = "1.0",
            description = "How far apart a finding and a label may lie in time (default: ${DEFAULT-VALUE}).")
    private double seconds;

    @Option(names = "--json", paramLabel = "FILE", description = "Write everything as JSON.")
    private Path json;

    @Option(names = "--csv", paramLabel = "FILE", description = "Write the table as comma-separated text.")
    private Path csv;

    @Option(names = "--errors", paramLabel = "FILE", description = "Write every error as comma-separated text.")
    private Path errors;

    @Option(names = "--page", paramLabel = "FILE", description = "Write a page with the table, plots and error links.")
    private Path page;

    @Option(
            names = "--baseline",
            paramLabel = "FILE",
            description =
                    "Compare with the JSON of an earlier score; exits with 2 where something got worse beyond noise.")
    private Path baseline;

    @Option(
            names = "--fit",
            paramLabel = "FILE",
            description = "Fit the standards to the labels by measuring the results' tracks anew, and write a standards"
                    + " file; takes minutes.")
    private Path fit;

    @Option(
            names = "--standards",
            paramLabel = "FILE",
            description = "With --fit: the standards to start from (default: those of the project).")
    private Path standards;

    @Override
    public Integer call() {
        if (!(seconds > 0 && seconds <= 60)) {
            throw new MendableException("--within is " + seconds + ", but must lie above 0 and at most at 60 seconds");
        }
        if (standards != null && fit == null) {
            throw new ParameterException(spec.commandLine(), "--standards goes with --fit");
        }
        FilmPairing pairing = FilmPairing.of(LabelFolder.read(labels), ResultsReader.read(results));
        EventTolerance tolerance = EventTolerance.USUAL.within(seconds);
        ScoreReport report = ScoreReport.of(pairing, tolerance, ClipBootstrap.usual());
        spec.commandLine().getOut().print(ScoreText.of(report));
        write(json, ScoreJson.of(report));
        write(csv, ScoreCsv.table(report));
        write(errors, ScoreCsv.errors(report));
        if (page != null) {
            write(page, ScorePage.of(report, fromPageToResults()));
        }
        spec.commandLine().getOut().flush();
        if (fit != null) {
            fitStandards(pairing, tolerance);
        }
        return baseline == null ? ExitCode.DONE : compare(report);
    }

    private void fitStandards(FilmPairing pairing, EventTolerance tolerance) {
        PrintWriter out = spec.commandLine().getOut();
        out.println();
        FittedStandards fitted = StandardsFit.fit(
                RemeasuredFilms.of(pairing, results),
                Optional.ofNullable(standards)
                        .map(new SettingFiles()::standards)
                        .orElseGet(Standards::defaults),
                tolerance,
                ClipBootstrap.usual(),
                sentence -> {
                    out.println(sentence);
                    out.flush();
                });
        write(fit, fitted.file());
    }

    private int compare(ScoreReport report) {
        Comparison comparison = Comparison.of(RunSummary.read(baseline), RunSummary.of(report), ClipBootstrap.usual());
        spec.commandLine().getOut().print("\nAgainst " + baseline + ":\n" + comparison.inWords());
        spec.commandLine().getOut().flush();
        return comparison.worse().isEmpty() ? ExitCode.DONE : ExitCode.MENDABLE;
    }

    /** Address of the results folder for links on the page. */
    private String fromPageToResults() {
        Path folder = page.toAbsolutePath().normalize().getParent();
        Path target = results.toAbsolutePath().normalize();
        boolean sameRoot = folder.getRoot().equals(target.getRoot());
        String way = sameRoot
                ? folder.relativize(target).toString().replace('\\', '/')
                : target.toUri().toString();
        return way.isEmpty() || way.endsWith("/") ? way : way + "/";
    }

    /** Writes beside the file and moves it there. */
    private static void write(Path file, String text) {
        if (file == null) {
            return;
        }
        Path beside = file.resolveSibling(file.getFileName() + ".part");
        try {
            Files.writeString(beside, text);
            Files.move(beside, file, StandardCopyOption.REPLACE_EXISTING);
        } catch (IOException e) {
            throw new MendableException("cannot write " + file + " (" + e.getMessage() + "); name another place", e);
        }
    }
}
