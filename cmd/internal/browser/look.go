package browser

import (
	"encoding/base64"
	"encoding/json"
	"os"
	"testing"
)

// Eval runs JavaScript in the page, past its content security policy, and decodes what it comes to. A promise is waited for.
func (p *Page) Eval(t testing.TB, script string, into any) {
	t.Helper()
	var out struct {
		Result struct {
			Value json.RawMessage
		}
		Exception *struct {
			Text      string
			Exception struct{ Description string }
		} `json:"exceptionDetails"`
	}
	p.into(t, "Runtime.evaluate", map[string]any{"expression": script, "awaitPromise": true, "returnByValue": true}, &out)
	if e := out.Exception; e != nil {
		t.Fatalf("script: %s %s", e.Text, e.Exception.Description)
	}
	if into == nil {
		return
	}
	if err := json.Unmarshal(out.Result.Value, into); err != nil {
		t.Fatalf("script: %v", err)
	}
}

// Size makes the window this large in CSS pixels, as a phone's where mobile is set.
func (p *Page) Size(t testing.TB, width, height int, mobile bool) {
	t.Helper()
	p.do(t, "Emulation.setDeviceMetricsOverride", map[string]any{"width": width, "height": height, "deviceScaleFactor": 1, "mobile": mobile})
}

// Media emulates a medium ("print", "" for the screen) and a colour scheme ("light", "dark").
func (p *Page) Media(t testing.TB, medium, scheme string) {
	t.Helper()
	p.do(t, "Emulation.setEmulatedMedia", map[string]any{"media": medium, "features": []map[string]string{{"name": "prefers-color-scheme", "value": scheme}}})
}

// Press presses and releases a key by its DOM name, such as "Tab".
func (p *Page) Press(t testing.TB, key string, code int) {
	t.Helper()
	for _, kind := range []string{"rawKeyDown", "keyUp"} {
		p.do(t, "Input.dispatchKeyEvent", map[string]any{"type": kind, "key": key, "code": key, "windowsVirtualKeyCode": code})
	}
}

// Screenshot writes the whole page as PNG, for a person to look at.
func (p *Page) Screenshot(t testing.TB, path string) {
	t.Helper()
	var shot struct{ Data string }
	p.into(t, "Page.captureScreenshot", map[string]any{"captureBeyondViewport": true}, &shot)
	data, err := base64.StdEncoding.DecodeString(shot.Data)
	if err == nil {
		err = os.WriteFile(path, data, 0o644)
	}
	if err != nil {
		t.Fatal(err)
	}
}
