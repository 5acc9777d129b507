package report

import (
	"pvtally/rules"
	"pvtally/schema"
)

// The part of SARIF 2.1.0 (OASIS Standard, 2020) that says what we have to say. The structs are ours because what is unknown must be
// left out: a region, a rank or an offset of zero is a claim, and readers act on it.
type (
	sarifLog struct {
		Schema  string     `json:"$schema"`
		Version string     `json:"version"`
		Runs    []sarifRun `json:"runs"`
	}
	sarifRun struct {
		Tool        sarifTool         `json:"tool"`
		Invocations []sarifInvocation `json:"invocations"`
		ColumnKind  string            `json:"columnKind"`
		Results     []sarifResult     `json:"results"`
	}
	sarifTool struct {
		Driver sarifDriver `json:"driver"`
	}
	sarifDriver struct {
		Name    string      `json:"name"`
		Version string      `json:"version"`
		Rules   []sarifRule `json:"rules"`
	}
	sarifRule struct {
		ID         string         `json:"id"`
		Short      sarifText      `json:"shortDescription"`
		Full       sarifText      `json:"fullDescription"`
		Help       sarifText      `json:"help"`
		Default    sarifLevel     `json:"defaultConfiguration"`
		Properties map[string]any `json:"properties"`
	}
	sarifLevel struct {
		Level rules.Level `json:"level"`
	}
	sarifText struct {
		Text string `json:"text"`
	}
	sarifInvocation struct {
		Successful    bool                `json:"executionSuccessful"`
		Notifications []sarifNotification `json:"toolExecutionNotifications,omitempty"`
	}
	sarifNotification struct {
		Level     string          `json:"level"`
		Message   sarifText       `json:"message"`
		Locations []sarifLocation `json:"locations"`
	}
	sarifResult struct {
		RuleID       string            `json:"ruleId"`
		RuleIndex    *int              `json:"ruleIndex,omitempty"`
		Level        rules.Level       `json:"level"`
		Message      sarifText         `json:"message"`
		Locations    []sarifLocation   `json:"locations"`
		Related      []sarifLocation   `json:"relatedLocations,omitempty"`
		Fingerprints map[string]string `json:"partialFingerprints"`
		Properties   sarifProperties   `json:"properties,omitzero"`
	}
	sarifLocation struct {
		Physical sarifPhysical `json:"physicalLocation"`
		Message  *sarifText    `json:"message,omitempty"`
	}
	sarifPhysical struct {
		Artifact sarifArtifact `json:"artifactLocation"`
		Region   *sarifRegion  `json:"region,omitempty"`
	}
	sarifArtifact struct {
		URI string `json:"uri"`
	}
	sarifRegion struct {
		StartLine   int `json:"startLine"`
		StartColumn int `json:"startColumn,omitempty"`
		EndColumn   int `json:"endColumn,omitempty"`
	}
	sarifProperties struct {
		Model      string        `json:"model,omitempty"`
		Key        string        `json:"key,omitempty"`
		Page       int           `json:"page,omitempty"`
		Box        schema.Box    `json:"box,omitzero"`
		Printed    string        `json:"printed,omitempty"`
		Implied    []string      `json:"implied,omitempty"`
		Mistake    string        `json:"mistake,omitempty"`
		WouldBe    []string      `json:"would_be,omitempty"`
		Confidence float64       `json:"confidence,omitempty"`
		Deviation  rules.Percent `json:"deviation_pct,omitzero"`
		Rounding   rules.Percent `json:"rounding_pct,omitzero"`
		Caution    string        `json:"caution,omitempty"`
	}
)
