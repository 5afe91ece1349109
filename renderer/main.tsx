import '@mantine/core/styles/default-css-variables.css'
import '@mantine/core/styles/UnstyledButton.css'
import '@mantine/core/styles/CloseButton.css'
import '@mantine/core/styles/ActionIcon.css'
import '@mantine/core/styles/Paper.css'
import '@mantine/core/styles/Overlay.css'
import '@mantine/core/styles/ModalBase.css'
import '@mantine/core/styles/Modal.css'
import '@mantine/core/styles/Input.css'
import '@mantine/core/styles/PasswordInput.css'
import { StrictMode } from 'react'
import { createRoot } from 'react-dom/client'
import { App } from './app/App.tsx'
import './app/paper.css'
import { openBridge } from './bridge/open-bridge.ts'

const root = document.getElementById('root')
if (!root) throw new Error('index.html has no #root')
createRoot(root).render(<StrictMode><App bridge={openBridge()} /></StrictMode>)
