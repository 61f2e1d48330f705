import { mount } from "svelte";
import App from "./App.svelte";
import "@fontsource-variable/atkinson-hyperlegible-next/wght.css";
import "./look/tokens.css";
import "./look/frame.css";

mount(App, { target: document.getElementById("app")! });
