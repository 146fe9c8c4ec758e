package main

import "runtime/debug"

// version is what the build was made from: a release, or the revision of the
// source, marked when files had been changed since.
func version() string {
	info, ok := debug.ReadBuildInfo()
	if !ok {
		return "of unknown build"
	}
	return versionOf(info)
}

func versionOf(info *debug.BuildInfo) string {
	set := map[string]string{}
	for _, s := range info.Settings {
		set[s.Key] = s.Value
	}
	v := info.Main.Version
	if v == "" || v == "(devel)" {
		v = "built from source"
		if r := set["vcs.revision"]; r != "" {
			v += " at " + r[:min(12, len(r))]
		}
		if set["vcs.modified"] == "true" {
			v += ", changed since"
		}
	}
	return v + " (" + info.GoVersion + ")"
}
