package floorgauge.app.chain;

import floorgauge.app.command.BuildVersion;
import floorgauge.app.result.Digest;
import floorgauge.app.sheet.SheetThresholds;
import floorgauge.events.script.Script;
import floorgauge.events.standards.Setting;
import floorgauge.events.standards.Standards;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** What is set once for all films of a run. */
final class CommonSettings {

    private CommonSettings() {}

    /** By name; files by their digest. */
    static Map<String, String> of(ChainOptions options) {
        Map<String, String> settings = new TreeMap<>();
        settings.put("program", BuildVersion.version());
        settings.put("court", options.court().orElse("found"));
        settings.put(
                "standards", options.standards().map(new SettingFiles()::digest).orElse("default"));
        options.saved().ifPresent(file -> settings.put("savedCourt", new SettingFiles().digest(file)));
        if (!options.scripts().isEmpty()) {
            settings.put("scripts", Digest.ofText(scripts(options).toString()));
        }
        return settings;
    }

    static List<Script> scripts(ChainOptions options) {
        return ScriptFiles.read(options.scripts());
    }

    static Standards standards(ChainOptions options) {
        return options.standards().map(new SettingFiles()::standards).orElseGet(Standards::defaults);
    }

    static SheetThresholds thresholds(Standards standards) {
        return new SheetThresholds(
                standards.of(Setting.SPACING_CROWDED_DISTANCE), standards.of(Setting.SPACING_COLLAPSED_AREA));
    }
}
