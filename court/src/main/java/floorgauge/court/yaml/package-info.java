/**
 * YAML files that a person writes: read into nodes that know their line, so that every complaint says where. In comes a
 * path; out comes a {@link floorgauge.court.yaml.YamlNode}, or a {@link floorgauge.court.failure.MendableException}.
 */
package floorgauge.court.yaml;
