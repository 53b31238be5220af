package floorgauge.app.command;

import floorgauge.court.failure.MendableException;
import floorgauge.sampleclips.render.RenderJob;
import floorgauge.sampleclips.render.RenderPlan;
import floorgauge.sampleclips.render.RenderedFilm;
import floorgauge.sampleclips.render.camera.CameraFile;
import floorgauge.sampleclips.render.camera.CameraPath;
import floorgauge.sampleclips.render.camera.CameraStyle;
import floorgauge.sampleclips.render.camera.FrameTimes;
import floorgauge.sampleclips.render.gym.Gym;
import floorgauge.sampleclips.scenario.PlayedScene;
import floorgauge.sampleclips.scenario.ScenarioLibrary;
import floorgauge.sampleclips.truth.EventTruth;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import me.tongfei.progressbar.ProgressBar;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Renders scenarios of the library to film with their truth beside it. */
@Command(
        name = "render",
        mixinStandardHelpOptions = true,
        versionProvider = BuildVersion.class,
        description = "Renders scenarios to film, with what is true of every frame beside it.")
final class RenderCommand implements Callable<Integer> {

    private static final double BROADCAST_RATE = 60_000 / 1001.0;

    @Spec
    private CommandSpec spec;

    @Parameters(paramLabel = "SCENARIO", arity = "0..*", description = "Scenarios of the library; see --list.")
    private List<String> scenarios = List.of();

    @Option(names = "--list", description = "Name the scenarios, one a line, and stop.")
    private boolean list;

    @Option(
            names = "--seed",
            paramLabel = "N",
            defaultValue = "1",
            description = "Decides people, gym, camera place and noise (default: ${DEFAULT-VALUE}).")
    private long seed;

    @Option(
            names = "--out",
            paramLabel = "DIR",
            defaultValue = "out",
            description = "Folder to write into (default: ${DEFAULT-VALUE}).")
    private Path out;

    @Option(
            names = "--view",
            paramLabel = "STYLE",
            defaultValue = "tripod-side",
            description = "How it is filmed: tripod-side, tripod-corner, tripod-high, operator, phone"
                    + " (default: ${DEFAULT-VALUE}).")
    private String view;

    @Option(names = "--camera", paramLabel = "FILE", description = "A real camera: K, R, t in YAML or JSON.")
    private Path camera;

    @Option(
            names = "--floor",
            paramLabel = "KIND",
            defaultValue = "clean",
            description = "clean: this court's lines alone; school: those of other sports too, worn"
                    + " (default: ${DEFAULT-VALUE}).")
    private String floor;

    @Option(
            names = "--frames",
            paramLabel = "RATE",
            defaultValue = "30",
            description = "Frames a second: a number, 59.94, or variable (default: ${DEFAULT-VALUE}).")
    private String frames;

    @Option(
            names = "--bits",
            paramLabel = "N",
            defaultValue = "2000000",
            description = "Bits a second of the encoded film (default: ${DEFAULT-VALUE}).")
    private long bits;

    @Override
    public Integer call() {
        if (list) {
            ScenarioLibrary.list().forEach(spec.commandLine().getOut()::println);
            return ExitCode.DONE;
        }
        if (scenarios.isEmpty()) {
            throw new ParameterException(spec.commandLine(), "say which scenario to render; --list names them");
        }
        CameraPath given = camera == null ? null : CameraPath.fixed(CameraFile.read(camera));
        List<PlayedScene> scenes =
                scenarios.stream().map(s -> ScenarioLibrary.load(s, seed)).toList();
        for (PlayedScene scene : scenes) {
            RenderedFilm film = render(scene, given);
            EventTruth.write(scene, seed, film.film());
            spec.commandLine().getOut().println(film.film());
        }
        return ExitCode.DONE;
    }

    private RenderedFilm render(PlayedScene scene, CameraPath given) {
        RenderPlan plan = RenderPlan.in(gym(scene), scene, scene.end(), style(), seed)
                .withTimes(times(scene.durationSeconds()))
                .withBitsPerSecond(checkedBits());
        if (given != null) {
            plan = plan.withPath(given, camera.getFileName().toString());
        }
        try (ProgressBar bar = new ProgressBar(scene.name(), plan.times().count())) {
            return new RenderJob(plan, out, scene.name()).run((done, total) -> bar.stepTo(done));
        }
    }

    private long checkedBits() {
        if (bits < 100_000 || bits > 50_000_000) {
            throw new MendableException("--bits " + bits + ": expected 100000 to 50000000 bits a second");
        }
        return bits;
    }

    private CameraStyle style() {
        return CameraStyle.named(view)
                .orElseThrow(() -> new MendableException(
                        "--view " + view + ": expected one of " + String.join(", ", CameraStyle.labels())));
    }

    private Gym gym(PlayedScene scene) {
        return switch (floor.toLowerCase(Locale.ROOT)) {
            case "clean" -> Gym.clean(scene.rules(), RenderPlan.gymSeed(seed));
            case "school" -> Gym.school(scene.rules(), 0.35, RenderPlan.gymSeed(seed));
            default -> throw new MendableException("--floor " + floor + ": expected clean or school");
        };
    }

    private FrameTimes times(double durationSeconds) {
        if (frames.equals("variable")) {
            return FrameTimes.variable(30, durationSeconds, seed);
        }
        try {
            double rate = frames.equals("59.94") ? BROADCAST_RATE : Double.parseDouble(frames);
            return FrameTimes.even(rate, durationSeconds);
        } catch (IllegalArgumentException e) {
            throw new MendableException("--frames " + frames + ": expected 1 to 240 frames a second, or variable", e);
        }
    }
}
